"""Shape stage: a Spec in, hoops, tapes, cloth pieces, body and skirt out. Geometry only."""
