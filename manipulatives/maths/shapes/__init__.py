"""Shapes on plain and dotted paper, in whole numbers."""
