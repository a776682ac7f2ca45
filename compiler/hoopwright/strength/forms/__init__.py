"""Closed forms of mechanics, each of one matter and none of a spec."""
