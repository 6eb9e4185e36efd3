"""The form of the lesson maker, part by part."""
