"""The commands of `manipulatives`, one file each."""
