"""Each manipulative drawn once, as plain shapes in millimetres.

A drawing does not depend on paper, browser or notebook: `svg` makes a still picture of it, and the
sheet prints it to scale. Colours are names of the kit's tokens, never numbers.
"""
