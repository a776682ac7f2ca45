"""Strength stage: a Shape and its materials in, an Assessment out. Mechanics only."""
