"""Which topics a message asks about: its signs, their points, its parts and items."""
