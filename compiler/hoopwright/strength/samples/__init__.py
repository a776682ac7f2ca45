"""What a sample tested on the bench says of its stock."""
