"""The catalogue: every skill, and the published standards that it serves."""
