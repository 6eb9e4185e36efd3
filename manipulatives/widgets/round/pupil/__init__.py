"""A round for one pupil alone."""
