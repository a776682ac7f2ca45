"""Compare: two plans against each other, and many side by side. Reads finished plans only."""
