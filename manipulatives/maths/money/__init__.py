"""Money: coins, amounts, and coins on a tray."""
