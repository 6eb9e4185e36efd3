"""The tasks of the strand."""
