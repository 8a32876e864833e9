"""Chargers by their figure, switch, outputs and banks."""
