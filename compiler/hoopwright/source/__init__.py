"""Source stage: text in, plain values and a span for every path out.

Knows YAML, positions, limits of size, and units. Knows nothing of hoops.
"""
