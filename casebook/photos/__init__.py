"""Photographs: looked at without trust, and made small for the pages without their tags."""
