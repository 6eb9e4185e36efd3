"""The count-aloud at the end of a round."""
