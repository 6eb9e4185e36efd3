"""Tasks: what one is, how it is chosen and made, and how an answer is judged."""
