"""What a lesson leaves behind: pupils' results and teachers' sessions, as files to read back."""
