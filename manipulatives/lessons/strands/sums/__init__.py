"""What addition and subtraction share."""
