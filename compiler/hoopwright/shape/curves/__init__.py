"""Curves and their arithmetic: ellipses, springs held at a chord or drawn by ties, roots."""
