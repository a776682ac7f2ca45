"""What to change when a check fails, and how much it helps."""
