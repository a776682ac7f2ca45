"""How each family that is no plain cage on tapes is solved or judged."""
