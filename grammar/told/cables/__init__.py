"""Cables, studs and lugs."""
