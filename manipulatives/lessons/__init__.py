"""A lesson as plain data: the skill catalogue, task makers, rounds and lesson files."""
