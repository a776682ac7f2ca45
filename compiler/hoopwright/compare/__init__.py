"""Compare stage: plans in, what changed between them out."""
