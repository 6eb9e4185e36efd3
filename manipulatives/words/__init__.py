"""Vocabulary: numbers, times, money, shapes and columns in words, for the US and the UK."""
