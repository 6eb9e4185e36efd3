"""What is true: exact mathematics in whole numbers and fractions, on the standard library only."""
