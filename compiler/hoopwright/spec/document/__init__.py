"""From files as written to the one document that is built."""
