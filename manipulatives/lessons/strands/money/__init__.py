"""The money strand: its skills, tasks, worked steps and foreseeable mistakes."""
