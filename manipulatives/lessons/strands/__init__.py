"""The strands: for each its skills, tasks, worked steps and foreseeable mistakes."""
