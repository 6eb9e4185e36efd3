"""Paper, lines and pages: where things stand on a sheet, whatever they are."""
