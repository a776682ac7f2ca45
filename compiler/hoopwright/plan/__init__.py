"""Plan stage: all results in, one Plan value out. Adds nothing new."""
