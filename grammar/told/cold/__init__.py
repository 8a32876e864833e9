"""Degrees and weather."""
