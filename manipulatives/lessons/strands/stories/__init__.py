"""One-step stories of addition and subtraction."""
