"""Years of a battery, told as people tell them."""
