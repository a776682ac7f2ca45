"""A small SVG writer and, above it, every picture of a plan.

``number``, ``letters``, ``sheet``, ``spread`` and ``marks`` know nothing of hoops; ``body``, ``scene``,
``elevation``, ``hem``, ``tapes``, ``coils``, ``cloth``, ``section``, ``gauge`` and ``steps`` draw a plan.
"""
