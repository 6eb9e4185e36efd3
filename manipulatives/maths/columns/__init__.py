"""Written sums: their digits, their difficulty, and their faults."""
