"""The shapes that tasks ask about."""
