"""The local server: a shelf of lessons, their boards, and what can be made from them."""
