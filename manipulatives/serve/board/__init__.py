"""A lesson as a board: its notebook run cell by cell through Voila, and shown by one page."""
