"""One lesson, several forms: notebook, page, sheet and key."""
