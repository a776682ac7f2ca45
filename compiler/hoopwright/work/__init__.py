"""Work stage: everything resolved in, a graph of cut, join, sew and fit tasks in sessions out."""
