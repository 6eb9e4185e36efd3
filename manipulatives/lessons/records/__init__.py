"""Record files of lessons, read back: the results of pupils and the sessions of teachers."""
