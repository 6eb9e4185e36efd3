"""What all rounds share."""
