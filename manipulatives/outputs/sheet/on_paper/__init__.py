"""For each manipulative what of its tasks goes on paper."""
