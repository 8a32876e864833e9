"""Figures that no rule settles: the points of their surroundings for each fact, and what adds them up."""
