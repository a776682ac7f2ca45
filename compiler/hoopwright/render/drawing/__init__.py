"""A small SVG writer and, above it, every picture of a plan.

``letters``, ``sheet``, ``spread``, ``marks`` and ``columns`` know nothing of hoops. ``body``, ``scene``, ``page`` and
``standing`` are what figures share: the wearer, the cage on her, the page they stand on. Every other file draws one
figure, or, in ``steps``, what a step's result looks like.
"""
