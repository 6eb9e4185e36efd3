"""The foreseeable mistakes of the strand."""
