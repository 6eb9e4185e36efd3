"""How the tasks of each manipulative are printed."""
