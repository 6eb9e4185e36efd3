"""A task on paper: its printed parts, and the place for its answer."""
