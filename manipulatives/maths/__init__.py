"""Exact mathematics in whole numbers and fractions, with the standard library only."""
