"""The addition strand: its skills, tasks, worked steps and foreseeable mistakes."""
