"""What commands share: arguments, writing a file, output as JSON, progress, several problems."""
