"""Whole numbers: counting, place value, blocks, charts and number lines."""
