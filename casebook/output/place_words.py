"""Places of a record in words: "endband head" is "the head endband", "sheet/verso" its verso."""

from __future__ import annotations

from casebook.compute.runs import SELF
from casebook.vocabulary import Lexicon

_QUALIFIERS = frozenset(
    (
        *("head", "tail", "front", "back", "left", "right", "upper", "lower"),
        *("inner", "outer", "recto", "verso", "top", "bottom"),
    )
)
_ZONES = frozenset({"spine", "board", "joint"})
"""Parts that a layer reaches over: `cloth-lining/board 1` is the cloth lining on board 1."""


def place_words(reference: str, lexicon: Lexicon) -> str:
    """A part or layer with its article; in a run of steps `each` is the member itself."""
    if reference == SELF:
        return "it"
    if "/" in reference:
        whole, _, face = reference.rpartition("/")
        return _within(whole.strip(), face.strip(), lexicon)
    words = reference.split()
    if len(words) > 1 and words[-1] in _QUALIFIERS:
        words = [words[-1], *words[:-1]]
    spelt = _spelt(words, lexicon)
    return spelt if spelt[-1:].isdigit() else f"the {spelt}"


def _within(whole: str, face: str, lexicon: Lexicon) -> str:
    """A face, a part of a part, or a layer on one of the parts that it spans."""
    name, of = place_words(face, lexicon), place_words(whole, lexicon)
    if _is_layer(whole, lexicon) and face.partition(" ")[0] in _ZONES:
        return f"{of} on {name}"
    side = " face" if face in ("inner", "outer") else ""
    return f"{name}{side} of {of}"


def _is_layer(place: str, lexicon: Lexicon) -> bool:
    """Whether a place is no part of the trade's: a layer, by a name of its own."""
    words = place.rpartition("/")[2].split()
    return place != SELF and not any(lexicon.term("parts", word) for word in words)


def _spelt(words: list[str], lexicon: Lexicon) -> str:
    """Words of a place without their hyphens, unless the trade spells them with these."""
    return " ".join(_word(one, lexicon) for one in words)


def _word(word: str, lexicon: Lexicon) -> str:
    term = lexicon.term("parts", word) if "-" in word else None
    bare = word.replace("-", " ")
    return term.label if term and term.label.replace("-", " ") == bare else bare
