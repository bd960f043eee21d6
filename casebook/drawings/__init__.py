"""Drawings: cross-sections, the way back, hours and areas as SVG, each with the same in words."""
