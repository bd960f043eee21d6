"""The only YAML room: text to nodes with places, every fault a diagnostic in our own words."""

from __future__ import annotations

from casebook.source.faults import MAX_DEPTH
from casebook.source.front_matter import Document, read_document
from casebook.source.nodes import Entry, Mapping, Node, Scalar, Sequence
from casebook.source.parsing import Parsed, parse
from casebook.source.text import MAX_BYTES, RULES, decode, lines_of

__all__ = [
    "MAX_BYTES",
    "MAX_DEPTH",
    "RULES",
    "Document",
    "Entry",
    "Mapping",
    "Node",
    "Parsed",
    "Scalar",
    "Sequence",
    "decode",
    "lines_of",
    "parse",
    "read_document",
]
