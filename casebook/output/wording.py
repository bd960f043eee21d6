"""Words for pages: a term with its link and gloss, a place with its article, a list in English."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from casebook.model.base import Gap, Many, items, known
from casebook.model.materials import Material
from casebook.output.contexts import Line, Run
from casebook.values.quantities import Quantity
from casebook.vocabulary import Lexicon

WAYS = {
    "structures": "structure",
    "damages": "damage",
    "operations": "operation",
}
"""The vocabularies that are ways in, and what each is called in an address."""

_QUALIFIERS = frozenset(
    (
        *("head", "tail", "front", "back", "left", "right", "upper", "lower"),
        *("inner", "outer", "recto", "verso", "top", "bottom"),
    )
)


def way_address(kind: str, name: str) -> str:
    """Where the page of a term stands, from the site's top; "" if it has none."""
    if kind in ("materials", "agents"):
        return f"materials/{name}/index.html"
    return f"ways/{WAYS[kind]}/{name}/index.html" if kind in WAYS else ""


class Wording:
    """Writes words of a record for one page: `root` leads from it to the site's top."""

    def __init__(self, lexicon: Lexicon, root: str) -> None:
        self.lexicon = lexicon
        self.root = root

    def term(self, kind: str, word: str) -> Run:
        """A word with the link to its page and its gloss, where it is a term."""
        found = self.lexicon.resolve(kind, word)
        if found is None:
            return Run(word)
        term = self.lexicon.terms[found[0]][found[1]]
        address = way_address(*found)
        href = self.root + address if address else ""
        return Run(term.label or word, href, known(term.gloss) or "")

    def terms(self, kind: str, words: Many[str]) -> Line:
        """Several words, joined as in a sentence."""
        if isinstance(words, Gap):
            return (Run(str(words)),)
        return listed([(self.term(kind, word),) for word in words])

    def place(self, reference: str) -> str:
        """A part or layer with its article: "the head endband", "the verso of the sheet"."""
        if "/" in reference:
            whole, _, face = reference.rpartition("/")
            return f"the {face.strip()} of {self.place(whole.strip())}"
        words = reference.split()
        if words and words[-1].isdigit():
            return reference
        if len(words) > 1 and words[-1] in _QUALIFIERS:
            words = [words[-1], *words[:-1]]
        return "the " + " ".join(words).replace("-", " ")

    def places(self, references: Many[str]) -> Line:
        """Several places, joined as in a sentence."""
        if isinstance(references, Gap):
            return (Run(str(references)),)
        return listed([(self.place_run(one),) for one in references])

    def place_run(self, reference: str) -> Run:
        """A place, with the gloss of its part where it is one of the trade's words."""
        found = self.lexicon.place(reference)
        gloss = known(self.lexicon.terms[found[0][0]][found[0][1]].gloss) if found else ""
        return Run(self.place(reference), "", gloss or "")

    def material(self, material: Material | Gap | None) -> Line:
        """A material as a phrase: what it is, how strong or heavy, whose, in what."""
        if material is None or isinstance(material, Gap):
            return (Run(_GAPS.get(str(material), str(material))),) if material else ()
        details = [
            *self._figures(material),
            *_texts(material.colour, material.product, material.maker),
            *([f"lot {material.lot}"] if known(material.lot) else []),
            *([f"toned {material.toned}"] if known(material.toned) else []),
        ]
        line = (*self._name(material), *(Run(f", {detail}") for detail in details))
        damped = (Run("damped "), *line) if known(material.damped) else line
        carrier = self.material(material.carrier)
        return (*damped, Run(" in "), *carrier) if carrier else damped

    def adhesive(self, material: Material | Gap | None) -> Line:
        """An adhesive as a phrase; one that is not known is said to be an adhesive."""
        if isinstance(material, Gap) and str(material) in _ADHESIVES:
            return (Run(_ADHESIVES[str(material)]),)
        return self.material(material)

    def _name(self, material: Material) -> Line:
        if name := known(material.is_):
            return (self.term("materials", name),)
        if isinstance(material.is_, Gap):
            return (Run(f"a material {material.is_}"),)
        if material.mix:
            parts = [
                f"{self.lexicon.label('materials', one)} {share}"
                for one, share in material.mix.items()
            ]
            return (Run(" : ".join(parts)),)
        if maybe := items(material.perhaps):
            line = (Run("perhaps "), *self.terms("materials", maybe))
            ruled_out = items(material.not_)
            return (
                (*line, Run(", not "), *self.terms("materials", ruled_out)) if ruled_out else line
            )
        return (Run("a material not named"),)

    def _figures(self, material: Material) -> list[str]:
        figures = (known(material.concentration), known(material.weight), known(material.thickness))
        return [str(one) for one in figures if one is not None]


_GAPS = {"none": "nothing", "unnamed": "a material not named", "unknown": "an unknown material"}
_ADHESIVES = {
    "none": "no adhesive",
    "unnamed": "an adhesive not named",
    "unknown": "an unknown adhesive",
}


def _texts(*values: str | Gap | None) -> list[str]:
    return [value for value in values if isinstance(value, str) and value]


def listed(lines: Sequence[Line], last: str = " and ") -> Line:
    """Lines joined as a list in a sentence: "a, b and c"."""
    found: list[Run] = []
    for n, line in enumerate(lines):
        if n:
            found.append(Run(last if n == len(lines) - 1 else ", "))
        found.extend(line)
    return tuple(found)


def text_of(line: Line) -> str:
    """A line as plain text."""
    return "".join(run.text for run in line)


def capital(line: Iterable[Run]) -> Line:
    """A line with a capital first, empty runs dropped."""
    runs = [run for run in line if run.text]
    if runs:
        runs[0] = replace(runs[0], text=runs[0].text[:1].upper() + runs[0].text[1:])
    return tuple(runs)


def sentence(line: Iterable[Run]) -> Line:
    """A line as a sentence: a capital first, a full stop last, empty runs dropped."""
    runs = list(capital(line))
    if not runs:
        return ()
    if not runs[-1].text.rstrip().endswith((".", "?", "!", "…")):
        runs.append(Run("."))
    return tuple(runs)


def say(value: object) -> str:
    """A value or a gap as it is written; "" where the key was left out."""
    if value is None:
        return ""
    if isinstance(value, Quantity):
        return str(value)
    if isinstance(value, bool):
        return "yes" if value else "no"
    return str(value)
