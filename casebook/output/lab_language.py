"""The lab's language and units, as its settings say: what pages are written with."""

from __future__ import annotations

from casebook.model.base import known
from casebook.model.settings import Settings
from casebook.values.language import ENGLISH, is_english, is_tag, language
from casebook.values.notation import Notation, Units


def notation_of(settings: Settings) -> Notation:
    """How a lab writes dates and measures; in English where its language has no phrases."""
    return Notation(language(tag_of(settings)) or ENGLISH, settings.units or Units.BOTH)


def tag_of(settings: Settings) -> str:
    """The tag of the language in which the lab writes."""
    tag = known(settings.language) or ""
    return tag if is_tag(tag) else ENGLISH.tag


def foreign_tag(settings: Settings) -> str:
    """The tag of what the lab wrote where it is not English as the rest of a page; else ""."""
    tag = tag_of(settings)
    return "" if is_english(tag) else tag
