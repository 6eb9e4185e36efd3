"""The place value strand: its skills, tasks, worked steps and foreseeable mistakes."""
