"""What is noted on a photo is read in its short and its long form."""

from __future__ import annotations

import pytest

from casebook.model import marks
from casebook.model.base import items
from casebook.model.marks import Fit, Mark, Match, Scale, Swatch, Target, in_frame
from casebook.values.points import Outline, Path, Point
from casebook.values.quantities import Length
from tests.model.reads import holds, reads


def test_every_field_is_documented_and_no_key_is_a_trap():
    holds(marks)


def test_a_mark_is_a_box_a_line_or_an_outline_on_a_photo():
    assert str(reads(Mark, "{photo: front, box: 10 20 30 40}").box) == "10 20 30 40"
    assert isinstance(reads(Mark, '{photo: front, line: "1 2, 3 4"}').line, Path)
    assert isinstance(
        reads(Mark, '{photo: front, outline: "1% 2%, 3% 4%, 5% 6%"}').outline, Outline
    )


def test_a_scale_is_there_or_not_or_gives_a_length():
    assert reads(Scale, "yes") == Scale(in_frame=True)
    long = reads(Scale, "{from: 120 1480, to: 1320 1484, length: 100 mm}")
    assert long.from_ == Point.parse("120 1480")
    assert long.length == Length.parse("100 mm")


def test_a_target_is_there_or_not_or_gives_its_patches():
    assert reads(Target, "no") == Target(in_frame=False)
    (patch,) = items(reads(Target, "{patches: [{box: 40 40 60 60, colour: L 95 a 0 b 0}]}").patches)
    assert str(patch.colour) == "L 95 a 0 b 0"


@pytest.mark.parametrize(
    ("cls", "text", "said"),
    [
        (Scale, "yes", True),
        (Scale, "no", False),
        (Scale, "{in-frame: unknown}", None),
        (Scale, "{from: 1 2, to: 3 4, length: 10 mm}", True),
        (Target, "no", False),
        (Target, "{patches: {box: 1 2 3 4, colour: L 50 a 0 b 0}}", True),
    ],
)
def test_points_and_patches_say_that_it_is_in_frame(cls, text, said):
    assert in_frame(reads(cls, text)) is said


def test_a_fit_names_two_points_on_either_photo():
    fit = reads(Fit, "{over: front-before, here: [1 2, 30 40], there: [2 2, 31 40]}")
    assert [str(one) for one in items(fit.here)] == ["1 2", "30 40"]


def test_a_colour_is_measured_or_seen_on_a_photo():
    match = reads(Match, "{original: L 52 a 3 b 10, fill: {photo: after, box: 5% 5% 2% 2%}}")
    assert match.original == reads(Swatch, "{colour: L 52 a 3 b 10}")
    assert match.fill == reads(Swatch, "{photo: after, box: 5% 5% 2% 2%}")
