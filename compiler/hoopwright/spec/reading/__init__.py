"""From a well-formed document to typed values, subject by subject."""
