"""Packlarder: a recipe book of home-dried food, checked, worked out and published."""
