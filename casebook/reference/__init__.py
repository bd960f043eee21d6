"""The reference, read from the code: rules explained, fields described, a schema for editors."""

from __future__ import annotations

from casebook.reference.fields import fields_page
from casebook.reference.practice import explain, explained, rules_page, suggest_rule
from casebook.reference.shape import json_schema, json_schema_text

__all__ = [
    "explain",
    "explained",
    "fields_page",
    "json_schema",
    "json_schema_text",
    "rules_page",
    "suggest_rule",
]
