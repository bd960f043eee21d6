"""Writing for the conservator: a new archive, a new case, and later the sitting's notes."""
