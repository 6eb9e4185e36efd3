"""Written sums worked out step by step, in the class's own method."""
