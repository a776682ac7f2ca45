"""A spec held against its schema, its own names, and what is likely."""
