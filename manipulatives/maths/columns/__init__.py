"""Written sums: their digits, their difficulty, and how they go wrong."""
