"""A lesson as plain data: the skill catalogue, task generators, rounds and lesson files."""
