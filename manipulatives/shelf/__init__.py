"""A folder of lessons: found, opened, checked, saved, and made into what they are taught with."""
