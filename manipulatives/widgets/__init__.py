"""What a child touches: one folder a manipulative, and what they share."""
