"""A task on paper: what of it is printed, and where its answer goes."""
