"""Words for pages: a term with its link and gloss, a place with its article, a list in English."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from casebook.model.base import NOTHING, Gap, Many, Unknowing, items, known
from casebook.model.materials import Basis, Material, Toning
from casebook.output.contexts import Line, Run
from casebook.output.place_words import place_words
from casebook.values.dates import Date
from casebook.values.notation import PLAIN, Notation
from casebook.values.quantities import Length
from casebook.vocabulary import Lexicon

WAYS = {
    "structures": "structure",
    "damages": "damage",
    "operations": "operation",
}
"""The vocabularies that are ways in, and what each is called in an address."""


def way_address(kind: str, name: str) -> str:
    """Where the page of a term stands, from the site's top; "" if it has none."""
    if kind in ("materials", "agents"):
        return f"materials/{name}/index.html"
    return f"ways/{WAYS[kind]}/{name}/index.html" if kind in WAYS else ""


Titles = Mapping[str, tuple[str, str]]


class Wording:
    """Writes words of a record for one page: `root` leads from it to the site's top.

    `cases` gives the id and the title of every case on the site, by each id it has or had; `pages`
    the addresses of its terms' pages, None standing for all; `notation` how dates and measures are
    written.
    """

    def __init__(
        self,
        lexicon: Lexicon,
        root: str,
        cases: Titles = NOTHING,
        pages: frozenset[str] | None = None,
        notation: Notation = PLAIN,
    ) -> None:
        self.lexicon = lexicon
        self.root = root
        self.cases = cases
        self.pages = pages
        self.notation = notation

    def say(self, value: object) -> str:
        """A value for readers, or how it is not known: dates and lengths in the lab's notation."""
        if isinstance(value, Date):
            return self.notation.date(value)
        return self.notation.length(value) if isinstance(value, Length) else say(value)

    def measured(self, value: object, form: str, gap: str) -> str:
        """A value in its form, such as "{} thick", or in another how it is not known; or ""."""
        return _formed(value, self.say(value), form, gap)

    def term(self, kind: str, word: str) -> Run:
        """A word with the link to its page and its gloss, where it is a term."""
        found = self.lexicon.resolve(kind, word)
        if found is None:
            return Run(word)
        term = self.lexicon.terms[found[0]][found[1]]
        address = way_address(*found)
        there = address and (self.pages is None or address in self.pages)
        href = self.root + address if there else ""
        return Run(term.label or word, href, known(term.gloss) or "")

    def terms(self, kind: str, words: Many[str]) -> Line:
        """Several words, joined as in a sentence."""
        if isinstance(words, Gap):
            return (Run(say(words)),)
        return listed([(self.term(kind, word),) for word in words])

    def place(self, reference: str) -> str:
        """A part or layer with its article: "the head endband", "the verso of the sheet"."""
        return place_words(reference, self.lexicon)

    def places(self, references: Many[str]) -> Line:
        """Several places, joined as in a sentence."""
        if isinstance(references, Gap):
            return (Run(say(references)),)
        return listed([(self.place_run(one),) for one in references])

    def place_run(self, reference: str) -> Run:
        """A place, with the gloss of its part where it is one of the trade's words."""
        found = self.lexicon.place(reference)
        gloss = known(self.lexicon.terms[found[0][0]][found[0][1]].gloss) if found else ""
        return Run(self.place(reference), "", gloss or "")

    def material(self, material: Material | Gap | None, noun: str = "material") -> Line:
        """A material as a phrase: "damped linen of 120 g/m² (lot 24-7), toned beforehand".

        Where it is not known, `noun` says what it is that is not.
        """
        if material is None or isinstance(material, Gap):
            return (Run(unknown(material, noun)),) if material else ()
        solvent = self.material(material.solvent, "solvent")
        carrier = self.material(material.carrier, "carrier")
        return (
            Run(_DAMPED[known(material.damped)]),
            *self._name(material, noun),
            *((Run(" in "), *solvent) if solvent else ()),
            *((Run(" in "), *carrier) if carrier else ()),
            *_bracketed(_labels(material)),
            *self._ready(material),
        )

    def adhesive(self, material: Material | Gap | None) -> Line:
        """An adhesive as a phrase; one that is not known is said to be an adhesive."""
        return self.material(material, "adhesive")

    def case(self, name: str) -> Run:
        """Another case by its title, with the way to its page where it has one on this site."""
        found = self.cases.get(name)
        return Run(found[1], f"{self.root}cases/{found[0]}/index.html") if found else Run(name)

    def _name(self, material: Material, noun: str) -> Line:
        """What it is, with its strength before the name and its weight behind."""
        strength = say(material.concentration)
        share = f"{_by(strength, material)} " if strength else ""
        weight = measured(material.weight, " of {}", ", weight {}")
        thick = self.measured(material.thickness, ", {} thick", ", thickness {}")
        return (Run(share), *self._word(material, noun), Run(weight + thick))

    def _word(self, material: Material, noun: str) -> Line:
        """The material's own word, its mixture, or what it may be."""
        if material.mix:
            names = listed([(self.term("materials", one),) for one in material.mix])
            parts = " : ".join(str(share) for share in material.mix.values())
            return (*names, Run(f" {parts}{_BASES.get(material.basis, '')}"))
        if name := known(material.is_):
            return (self.term("materials", name),)
        if maybe := items(material.perhaps):
            either = listed([(self.term("materials", one),) for one in maybe], " or ")
            return (Run("perhaps "), *either)
        if material.is_ is None and items(material.built_of):
            return (Run(f"a {noun} "), *self._built(material))
        gap = material.is_ if isinstance(material.is_, Gap) else Gap(Unknowing.UNNAMED)
        return (Run(unknown(gap, noun)),)

    def _ready(self, material: Material) -> Line:
        """How it was made ready: toned, prepared, built up; and whether it splits."""
        toned = self._toned(known(material.toned))
        prepared = say(material.prepared)
        built = self._built(material) if known(material.is_) else ()
        splits = "which splits in its own thickness" if known(material.splits) else ""
        told: list[Line] = [toned, (Run(prepared),), built, (Run(splits),)]
        kept = [line for line in told if text_of(line)]
        return tuple(run for line in kept for run in (Run(", "), *line))

    def _built(self, material: Material) -> Line:
        """What it was built up of beforehand, from the side that lies on the object."""
        layers = [self.material(one) for one in items(material.built_of)]
        return (Run("built up beforehand of "), *listed(layers)) if layers else ()

    def _toned(self, toned: Toning | None) -> Line:
        """How it got its colour: "toned before it was laid with acrylic paint (two coats)"."""
        if toned is None:
            return ()
        if isinstance(toned.with_, Gap) and toned.with_.kind is Unknowing.NONE:
            line: Line = (Run("not toned"),)
        else:
            when = f" {toned.when.value} it was laid" if toned.when else ""
            line = (Run(f"toned{when} with "), *self.terms("materials", toned.with_))
        return (*line, Run(f" ({toned.how})" if known(toned.how) else ""))


_BASES: Mapping[Basis | None, str] = {
    Basis.VOLUME: " by volume",
    Basis.MASS: " by mass",
    Basis.PARTS: " in parts",
}

_DAMPED = {True: "damped ", False: "dry ", None: ""}
_UNKNOWN = {
    Unknowing.NONE: "no {}",
    Unknowing.UNNAMED: "{a} {} not named",
    Unknowing.UNKNOWN: "an unknown {}",
    Unknowing.NOT_RECORDED: "{a} {} that is not recorded",
    Unknowing.NOT_READ: "{a} {} that the source names where it was not read",
}


def unknown(gap: Gap, noun: str) -> str:
    """A thing that is not known, in each of the ways: "an adhesive not named"."""
    article = "an" if noun[:1] in "aeiou" else "a"
    text = _UNKNOWN[gap.kind].replace("{a}", article).replace("{}", noun)
    return f"{text} ({gap.reason})" if gap.reason else text


def _by(strength: str, material: Material) -> str:
    """A strength with what it is measured by, where the figure does not say it itself."""
    return strength + ("" if material.mix else _BASES.get(material.basis, ""))


def _labels(material: Material) -> list[str]:
    """What stands in brackets behind a material: guesses ruled out, evidence, colour, label."""
    ruled_out = " or ".join(one.replace("-", " ") for one in items(material.not_))
    by = measured(material.maker, "by {}", "maker {}")
    product = measured(material.product, "{}", "product {}")
    known_both = known(material.product) and known(material.maker)
    return [
        f"not {ruled_out}" if ruled_out else "",
        say(material.evidence),
        measured(material.colour, "{}", "colour {}"),
        (" " if known_both else "; ").join(one for one in (product, by) if one),
        measured(material.lot, "lot {}", "lot {}"),
        measured(material.amount, "{}", "amount {}"),
    ]


def _bracketed(texts: Sequence[str]) -> Line:
    inside = "; ".join(one for one in texts if one)
    return (Run(f" ({inside})"),) if inside else ()


_KEYS = {
    "because": "the reason",
    "do": "the operation",
    "dries": "the drying",
    "fate": "where things went",
    "follow-up": "later looks",
    "hands": "who did it",
    "waits": "the waiting",
}


def key_words(key: str) -> str:
    """What a key of the record holds, in words."""
    return _KEYS.get(key, key.replace("-", " "))


def how_known(gap: Gap) -> str:
    """How something is not known, as the end of a sentence: "is unknown (a reason)"."""
    return f"{'was' if gap.kind is Unknowing.NOT_READ else 'is'} {say(gap)}"


def listed(lines: Sequence[Line], last: str = " and ") -> Line:
    """Lines joined as a list in a sentence: "a, b and c"."""
    found: list[Run] = []
    for n, line in enumerate(lines):
        if n:
            found.append(Run(last if n == len(lines) - 1 else ", "))
        found.extend(line)
    return tuple(found)


def listed_text(texts: Sequence[str], last: str = " and ") -> str:
    """Plain texts joined as a list in a sentence, empty ones left out."""
    return text_of(listed([(Run(text),) for text in texts if text], last))


def text_of(line: Line) -> str:
    """A line as plain text."""
    return "".join(run.text for run in line)


_KEPT_SMALL = re.compile(r"c\. |\S*[:/@]\S")
"""What begins small in a sentence too: a circa, an address."""


def capital(line: Iterable[Run]) -> Line:
    """A line with a capital first, empty runs dropped."""
    runs = [run for run in line if run.text]
    if runs and not _KEPT_SMALL.match(runs[0].text):
        runs[0] = replace(runs[0], text=runs[0].text[:1].upper() + runs[0].text[1:])
    return tuple(runs)


def capital_text(text: str) -> str:
    """A plain text with a capital first."""
    return text_of(capital((Run(text),)))


def sentence(line: Iterable[Run]) -> Line:
    """A line as a sentence: a capital first, a full stop last, empty runs dropped."""
    runs = list(capital(line))
    if not runs:
        return ()
    if not runs[-1].text.rstrip().endswith((".", "?", "!", "…")):
        runs.append(Run("."))
    return tuple(runs)


def sentence_text(text: str) -> str:
    """A plain text as a sentence; "" for none."""
    return text_of(sentence((Run(text),)))


def measured(value: object, form: str, gap: str) -> str:
    """A measure in its form, such as "{} thick", or in another how it is not known; or ""."""
    return _formed(value, say(value), form, gap)


def _formed(value: object, text: str, form: str, gap: str) -> str:
    return (gap if isinstance(value, Gap) else form).format(text) if text else ""


_SAID = {Unknowing.NOT_READ: "not read in the source", Unknowing.UNNAMED: "not named"}


def say(value: object) -> str:
    """A value as it is written, or how it is not known; "" where the key was left out."""
    if value is None:
        return ""
    if isinstance(value, Gap):
        reason = f" ({value.reason})" if value.reason else ""
        return _SAID.get(value.kind, value.kind.value) + reason
    if isinstance(value, bool):
        return "yes" if value else "no"
    return str(value)
