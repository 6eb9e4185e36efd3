"""Each manipulative drawn once, as plain shapes in millimetres.

A drawing knows nothing of paper, browser or notebook: `svg` makes a still picture of it, the sheet
prints it to scale. Colours are the names of the kit's tokens, never numbers.
"""
