"""What tests of strength share: ready cages, and closed forms that the compiler itself does not ask."""
