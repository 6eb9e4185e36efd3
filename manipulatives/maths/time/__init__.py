"""Clock times and the hands of a clock."""
