"""Ties inside hoops and behind the hips, and the lacing."""
