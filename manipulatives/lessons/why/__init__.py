"""From the answers of a pupil to the rules that may explain them, and to the next sum to give."""
