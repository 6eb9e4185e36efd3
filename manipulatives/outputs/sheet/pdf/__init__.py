"""Drawings as the pages of a PDF."""
