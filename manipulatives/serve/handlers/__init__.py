"""What the server answers: GET shows, POST changes, and only what is on the shelf."""
