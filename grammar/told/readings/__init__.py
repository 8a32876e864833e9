"""Volts at rest, under load, and only quoted."""
