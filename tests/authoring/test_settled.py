"""Each settled writing is found along the schema; what says more than it seems is left."""

from __future__ import annotations

import pytest

from casebook.authoring.edits import Written, apply
from casebook.authoring.settled import Settler, trailing
from casebook.model.archive import Case
from casebook.model.base import Record
from casebook.model.treatment import Step
from casebook.source import Mapping
from casebook.vocabulary import Lexicon, builtin

LEXICON = Lexicon(builtin())


def settled(text: str, cls: type[Record] = Step) -> str:
    """A record's text with every settled writing in the place of its other one."""
    written = Written(text.encode(), "lab.yml")
    assert isinstance(written.root, Mapping)
    assert not written.faults
    changes = Settler(written, LEXICON).record(cls, written.root).changes
    after, left = apply(written, sorted(changes, key=lambda one: one.start))
    assert left == ()
    return after.text


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("material: {is: linen}", "material: linen"),
        ("material:\n  is: linen  # new\ntime: 1 h", "material: linen  # new\ntime: 1 h"),
        ("material:\n\n  {is: linen}", "material: linen"),
        ('material: {is: "a, b"}', 'material: "a, b"'),
        ("material: {is: {is: linen}}", "material: {is: {is: linen}}"),
        ("fate: {is: own-case}", "fate: own-case"),
        (
            "agent: {is: acetone, carrier: {is: agar-gel}}",
            "agent: {is: acetone, carrier: agar-gel}",
        ),
        ("dries: [{for: 1 h}]", "dries: 1 h"),
        ("dries: [{for: 1 h}, {for: 2 h, under: [weights]}]", "dries: [1 h, 2 h under weights]"),
        ("dries:\n  - {for: 1 h}\n  - under: [weights]", "dries:\n  - 1 h\n  - under weights"),
        ("scope: {of: 52, done: 40}", "scope: 40 of 52"),
        ("walls: {inner: 1, outer: 2}", 'walls: "1 on, 2 off"'),
        (
            "material: {is: ink, toned: {when: after, with: [ink]}}",
            "material: {is: ink, toned: ink after}",
        ),
    ],
)
def test_a_record_is_written_short(text, expected):
    assert settled(text) == expected


def test_a_plain_step_is_one_line():
    text = "steps:\n  - words: photographed the tooling\n  - {words: 'a: b'}"
    assert settled(text, Case) == "steps:\n  - photographed the tooling\n  - 'a: b'"


def test_people_and_photos_are_written_short_too():
    text = "people: {AM: {role: conservator}, NO: {role: x, name: y}}\nphotos: [{file: a.jpg}]"
    after = "people: {AM: conservator, NO: {role: x, name: y}}\nphotos: a.jpg"
    assert settled(text, Case) == after


@pytest.mark.parametrize(
    "text",
    [
        "material: {is: linen, colour: brown}",
        "material: {is: linen 5 g/m²}",  # as a short form it would have a weight
        "material: {is: unknown}",  # as a short form nothing at all would be known of it
        "material: {is: linen, wieght: 5 g/m²}",
        "material: {wieght: linen}",
        "material: {mix: {ethanol: 1, water: 1}}",
        "material: {  # from the old stock\n  is: linen}",
        "material:\n  # from the old stock\n  is: linen",
        "material:  # of the old stock:\n  is: linen",
        "time: {is: 2 h}",
        "result: {is: x}",
        "material:\n  is: >\n    linen\n    canvas",
    ],
)
def test_a_record_that_would_read_otherwise_or_lose_a_comment_stays(text):
    assert settled(text) == text


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("hands: [AM]", "hands: AM"),
        ("hands: [ {who: AM} ]", "hands: AM"),
        ("hands: [\n  AM\n]", "hands: AM"),
        ("onto:\n  [spine]", "onto: spine"),
        ('tools: ["needle"]', 'tools: "needle"'),
        ("hands: [AM, RT]", "hands: [AM, RT]"),
        ("hands: [none]", "hands: [none]"),
        ("hands: []", "hands: []"),
        ("hands:\n  - AM", "hands:\n  - AM"),
        ("hands: [AM # alone\n]", "hands: [AM # alone\n]"),
        ("hands: [{who: AM, time: 1 h}]", "hands: [{who: AM, time: 1 h}]"),
        ("time: [2 h]", "time: [2 h]"),
    ],
)
def test_a_list_in_brackets_with_one_text_is_that_text(text, expected):
    assert settled(text) == expected


def test_a_list_inside_a_table_is_one_too():
    text = "gaps: {not recorded: [time], not read: [a, b]}"
    assert settled(text, Case) == "gaps: {not recorded: time, not read: [a, b]}"


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("material: Linen", "material: linen"),
        ('adhesive: "Wheat starch paste"', "adhesive: wheat-starch-paste"),
        ("tools: [Bone folder, needle]", "tools: [bone-folder, needle]"),
        ("material: {mix: {Ethanol: 1, water: 1}}", "material: {mix: {ethanol: 1, water: 1}}"),
        ("material: {mix: {Water: 1, water: 2}}", "material: {mix: {Water: 1, water: 2}}"),
        ("do: Wash", "do: wash"),
        ("adhesive: pva", "adhesive: pva"),
        ("agent: dichloromethane", "agent: dichloromethane"),
        ("tools: nitrile gloves", "tools: nitrile gloves"),
        ("tools: needles", "tools: needles"),
        ("material: Linen 5 g/m²", "material: Linen 5 g/m²"),
        ("material: my own cloth", "material: my own cloth"),
        ("onto: Spine", "onto: Spine"),
        ("result: Linen", "result: Linen"),
    ],
)
def test_another_spelling_of_a_term_becomes_its_id_and_a_synonym_stays(text, expected):
    assert settled(text) == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("temporary: True", "temporary: yes"),
        ("temporary: FALSE", "temporary: no"),
        ("temporary: yes", "temporary: yes"),
        ("temporary: perhaps", "temporary: perhaps"),
        ("hands: NO", "hands: NO"),
        ("time: Not recorded", "time: not recorded"),
        ("time: UNKNOWN (Page lost)", "time: unknown (Page lost)"),
        ("time: Unknowable", "time: Unknowable"),
        ('result: "Unknown"', 'result: "Unknown"'),
        ("note: None", "note: None"),
        ("grain: Along", "grain: along"),
        ("fate: Own case", "fate: own-case"),
        ("fate: {is: Kept with object, where: x}", "fate: {is: kept-with-object, where: x}"),
        ("fate: burnt", "fate: burnt"),
        ("time: 2 hrs", "time: 2 hrs"),
        ("date: March 1925", "date: March 1925"),
        ("cut: {height: 16 1/4 in}", "cut: {height: 16 1/4 in}"),
    ],
)
def test_answers_gaps_and_choices_are_written_as_the_reader_has_them(text, expected):
    assert settled(text) == expected


def test_what_stands_in_a_text_over_several_lines_is_not_touched():
    text = "do: >\n  Wash\nresult: |\n  a  \n\ntime: 'Not\n  recorded'"
    assert settled(text) == text


def test_white_space_at_the_ends_of_lines_is_found_save_in_texts():
    written = Written(b"a: x \t\n \n# b  \nc: |\n  d  \n  \ne: 'f  \n  g'", "lab.yml")
    found = [(one.span.line, one.span.column) for one in trailing(written)]
    assert found == [(1, 5), (2, 1), (3, 4)]
