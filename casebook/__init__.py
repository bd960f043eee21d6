"""Casebook: a site generator for treatment case histories of books and paper."""

__version__ = "0.1.0"
