"""Materials as a record says them: what was used, how sure, how much, and how it was put on."""

from __future__ import annotations

import re
from collections.abc import Mapping
from enum import StrEnum
from typing import Annotated, ClassVar

from casebook.model.base import Many, Maybe, Record, Words, public, record
from casebook.values.durations import Duration
from casebook.values.quantities import Count, Grammage, Length, Percent, Ratio

MaterialWord = Annotated[str, Words("materials")]
ToolWord = Annotated[str, Words("tools")]

_WITH_FIGURE = re.compile(
    r"(?P<name>.*?[^\s,]),?\s+(?P<figure>(?:about |c\. |ca\.? |~)?\d[\d.,/–-]*\s*"
    r"(?:(?P<share>%.*?)|(?P<weight>g\s*/\s*m.*|gsm)))(?:\s+in\s+(?P<solvent>\S.*))?$"
)
_WHEN = re.compile(r"(?P<with>.*?),?\s+(?P<when>before|after)(?: it was \w+)?(?:,\s*(?P<how>.+))?")


class Basis(StrEnum):
    """What the parts of a mixture are measured by."""

    VOLUME = "volume"
    MASS = "mass"
    PARTS = "parts"


class When(StrEnum):
    """Whether something was done to a material before it was laid or after."""

    BEFORE = "before"
    AFTER = "after"


@record
class Toning(Record):
    """How a material was given its colour. `acrylic-colour before, two thin coats` says all."""

    SHORT: ClassVar[str] = "with"

    with_: Many[MaterialWord] = public(())
    """What it was toned with; `none` where it was left as it was on purpose."""
    when: When | None = public()
    """Before it was laid, or after."""
    how: Maybe[str] = public()
    """How, how often, and how near it came."""

    @classmethod
    def from_text(cls, text: str) -> Mapping[str, str | list[str]]:
        """Read what it was toned with, and behind it when and how."""
        found = _WHEN.fullmatch(text.strip())
        if not found:
            return {"with": text}
        with_ = [one.strip() for one in found["with"].split("+")]
        rest = {key: found[key] for key in ("when", "how") if found[key]}
        return {"with": with_, **rest}


@record
class Material(Record):
    """A material, adhesive or agent in use: its name from the vocabulary and what is known of it.

    Plain text stands for `is`; a figure behind it is read too: `methyl-cellulose 4 %` gives the
    concentration, `tengujo 5 g/m²` the weight, `acrylic-resin 5 % in acetone` the solvent as well.
    """

    SHORT: ClassVar[str] = "is"

    is_: Maybe[MaterialWord] = public()
    """What it is: a word of the vocabulary, or in the lab's own words."""
    perhaps: Many[MaterialWord] = public(())
    """What it may be, where it could not be settled: the likeliest first."""
    not_: Many[MaterialWord] = public(())
    """What it was found not to be."""
    evidence: Maybe[str] = public()
    """What the naming rests on, such as "not tacky when warmed"."""
    weight: Maybe[Grammage] = public()
    """Mass per area. Unit: g/m². Source: ISO 536 (definition, read through a secondary text)."""
    thickness: Maybe[Length] = public()
    """Thickness of one layer. Unit: length."""
    product: Maybe[str] = public()
    """The product's trade name, as on its label. Source: AIC Guideline 27 (from memory)."""
    maker: Maybe[str] = public()
    """Who made or supplied it."""
    lot: Maybe[str] = public()
    """The maker's lot, roll or batch number."""
    colour: Maybe[str] = public()
    """Its colour in words."""
    toned: Maybe[Toning] = public()
    """What it was toned with, and whether before or after it was laid."""
    prepared: Maybe[str] = public()
    """How it was made ready before it was laid: coated and dried, split, washed."""
    built_of: Many[Material] = public(())
    """What it was built up from beforehand, from the side that lies on the object."""
    splits: Maybe[bool] = public()
    """Whether it gives way in its own thickness when pulled: yes or no."""
    damped: Maybe[bool] = public()
    """Whether it was damped before it was laid: yes or no."""
    mix: Mapping[MaterialWord, Ratio | Count] = public({})
    """A mixture: each material and its parts, such as `{ethanol: 1, water: 1}`."""
    basis: Basis | None = public()
    """What the parts of the mixture, or the per cent, are measured by."""
    concentration: Maybe[Percent] = public()
    """Strength of a solution or dispersion. Unit: per cent, with its basis if known."""
    solvent: Maybe[Material] = public()
    """What it is dissolved in."""
    carrier: Maybe[Material] = public()
    """What holds an agent in place, such as a gel or paste."""
    applied: Maybe[str] = public()
    """How it was put on: by brush, as a poultice, as a spray."""
    lasts: Maybe[Duration] = public()
    """How long it stayed on, each time. Unit: duration."""
    times: Maybe[Count] = public()
    """How often it was put on. Unit: count."""
    until: Maybe[str] = public()
    """What ended it, such as "softened"."""
    amount: Maybe[str] = public()
    """How much was used, as written."""

    @classmethod
    def from_text(cls, text: str) -> Mapping[str, str | list[str]]:
        """Read a name and, behind it, a concentration or a weight."""
        found = _WITH_FIGURE.fullmatch(text.strip())
        if not found:
            return {"is": text}
        key = "concentration" if found["share"] else "weight"
        solvent = {"solvent": found["solvent"]} if found["solvent"] else {}
        return {"is": found["name"], key: found["figure"], **solvent}
