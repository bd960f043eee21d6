"""The lab's own settings, `lab.yml`: who it is, its clients, its units, its voice."""

from __future__ import annotations

from collections.abc import Mapping

from casebook.model.base import Many, Maybe, Record, lab, public, record
from casebook.values.colours import Colour, Difference
from casebook.values.notation import Units
from casebook.values.quantities import Count


@record
class Client(Record):
    """A client of the lab. For the lab alone: a client site never names its key."""

    name: Maybe[str] = lab()
    """The client's name."""
    contact: Maybe[str] = lab()
    """How to reach the client."""


@record
class Settings(Record):
    """What `lab.yml` says."""

    format: Maybe[Count] = public()
    """The format of the archive's files; this version reads format 1. Unit: count."""
    name: Maybe[str] = public()
    """The lab's name, on every page."""
    about: Maybe[str] = public()
    """One sentence on what the lab is, for the home page."""
    invented: Maybe[str] = public()
    """For a made-up archive: the sentence that says so on every page."""
    address: Maybe[str] = public()
    """Where the lab is."""
    contact: Maybe[str] = public()
    """How to reach the lab."""
    logo: Maybe[str] = public()
    """An image file beside `lab.yml`, shown at the head of every page."""
    accent: Maybe[Colour] = public()
    """The colour of links, as `#17494d`; where it could not be read on paper, a darker shade of it
    is taken, and on the dark pages a lighter one."""
    footer: Many[str] = public(())
    """More lines for the foot of every page."""
    language: Maybe[str] = public()
    """The language in which the lab writes, as a tag such as `en-GB`, `en-US` or `de`: that of the
    dates on its pages, and of the signs in figures. Source: RFC 5646."""
    tag: Maybe[str] = public()
    """For identifiers that last: a domain or an e-mail address of the lab's and a year in which it
    was the lab's, such as `oakum-row.example,2025`. Source: RFC 4151."""
    tolerance: Maybe[Difference] = public()
    """How far the colour of a repair may lie from the original, as this lab sees it: a colour
    difference by CIEDE2000. Without it pages give differences and no verdict. Unit: ΔE00."""
    units: Units | None = public()
    """Which measures pages show: metric, imperial or both."""
    licence: Maybe[str] = public()
    """Under which terms texts and photos may be used."""
    clients: Mapping[str, Client] = lab({})
    """The lab's clients, by the key that a case names in `client`."""


DEFAULT_NAME = "Treatment archive"
"""The name of a lab that has not given one."""
