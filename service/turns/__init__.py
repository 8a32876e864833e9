"""A conversation: what it carries from turn to turn, and what a later turn asks of it."""
