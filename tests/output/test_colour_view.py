"""Colours of a repair on the page: figures, words for how each is known, and no verdict of ours."""

from __future__ import annotations

from dataclasses import replace
from types import SimpleNamespace

from casebook.model.photos import Image
from casebook.output.colour_view import MatchView, match_views
from casebook.output.render import render
from casebook.output.wording import text_of
from casebook.values.colours import Difference
from tests.builders import WORDING, archive
from tests.compute.written import case
from tests.output.plain import plain_lines

STEPS = """
id: one
steps:
  - do: infill
    onto: spine
    match: {original: L 52 a 3 b 10, fill: {photo: p, box: 4 4 8 8}, because: a shade lighter}
    tried:
      - {what: two coats, colour: L 45 a -3 b 10, outcome: given-up}
      - {material: wheat-starch-paste, colour: L 52.04 a 3 b 10, outcome: chosen}
photos: [{id: p, file: p.jpg, target: yes}]
"""


GREY = {"4 4 8 8": (0.2, 0.2, 0.2)}


def view(text: str = STEPS, tolerance: str = "3.0", areas=None) -> MatchView:
    one = case(text)
    whole = archive(one)
    settings = replace(whole.settings, tolerance=Difference.parse(tolerance) if tolerance else None)
    images = {one.id: {"p": Image("d", 100, 100, areas or GREY)}}
    (found,) = match_views(one, replace(whole, settings=settings, images=images), WORDING)
    return found


def test_the_original_comes_first_and_each_colour_is_held_against_it() -> None:
    found = view()
    assert [one.name for one in found.tones] == [
        "The original",
        "Two coats",
        "Wheat starch paste",
        "The repair",
    ]
    assert [one.difference for one in found.tones[:3]] == ["", "10.6", "0.0"]
    assert text_of(found.title) == "Infill: the spine"


def test_a_verdict_is_that_of_the_lab_and_names_its_tolerance() -> None:
    assert view().tones[1].verdict == "beyond the lab's tolerance of 3.0"
    assert view().tones[2].verdict == "within the lab's tolerance of 3.0"
    assert [one.verdict for one in view(tolerance="").tones] == ["", "", "", ""]
    assert any("no tolerance" in one for one in view(tolerance="").notes)


def test_the_page_says_which_is_measured_and_which_read_from_a_photo() -> None:
    found = view()
    assert found.tones[0].basis == "measured"
    assert found.tones[3].basis == "read from a photograph as it is"
    assert any(one.startswith("Measured and photographed") for one in found.notes)
    corrected = STEPS.replace(
        "target: yes", "target: {patches: {box: 4 4 8 8, colour: L 60 a 0 b 0}}"
    )
    assert view(corrected).tones[3].basis == "read from a photograph, corrected by its target"
    assert view(corrected).tones[3].lab.replace("\xa0", " ") == "L 60.0, a 0.0, b 0.0"


def test_how_far_the_target_was_missed_is_said_where_that_is_known() -> None:
    boxes = ("4 4 8 8", "20 4 8 8", "40 4 8 8")
    patches = ", ".join(
        f"{{box: {box}, colour: L {light} a 0 b 0}}"
        for box, light in zip(boxes, (50, 70, 90), strict=True)
    )
    areas = {box: (light, light, light) for box, light in zip(boxes, (0.2, 0.5, 0.7), strict=True)}
    corrected = STEPS.replace("target: yes", f"target: {{patches: [{patches}]}}")
    (said,) = (one for one in view(corrected, areas=areas).notes if "worst patch" in one)
    assert said.endswith(" off its own colour.")
    assert not any("worst patch" in one for one in view().notes)


def test_the_chosen_trial_is_marked_in_words() -> None:
    found = view()
    assert [one.outcome for one in found.tones] == ["", "given up", "chosen", ""]
    assert [one.chosen for one in found.tones] == [False, False, True, True]


def test_a_minus_is_a_minus_and_a_nought_is_none() -> None:
    assert view().tones[1].lab.replace("\xa0", " ") == "L 45.0, a −3.0, b 10.0"


def test_read_aloud_nothing_hangs_on_the_swatch() -> None:
    html = str(render("parts/case/colour.html", page=SimpleNamespace(matches=(view(),))))
    assert 'fill="#' in html
    assert "style=" not in html
    text = " ".join(plain_lines(html))
    assert "Two coats given up" in text
    assert "L 45.0, a −3.0, b 10.0" in text
    assert "10.6, beyond the lab's tolerance of 3.0" in text
