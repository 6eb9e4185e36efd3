"""The catalogue of skills, one table a strand."""
