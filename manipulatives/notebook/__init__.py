"""A lesson as a notebook: written, read without being run, and run where it has to be."""
