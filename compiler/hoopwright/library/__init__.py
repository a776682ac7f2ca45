"""Library: grades, goods, joins, tools and cautions with their sources; physical data, never a price.

Data only; a spec's own ``materials`` come first.
"""
