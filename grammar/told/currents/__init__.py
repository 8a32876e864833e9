"""Amps by where they flow, what drew them and what they do."""
