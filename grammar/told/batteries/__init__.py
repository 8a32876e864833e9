"""Batteries by their number, size, weight, charge and limits."""
