"""A round at a board."""
