"""Questions with numbers of the teacher's own."""
