"""What fittings change: from what was measured on the body to where the marks go."""
