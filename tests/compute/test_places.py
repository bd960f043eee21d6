"""Places come down to parts, through faces, zones and layers."""

from __future__ import annotations

import pytest

from casebook.compute.places import Ground, ground
from tests.compute.written import case


def below() -> Ground:
    return ground(
        case("""
parts:
  back: {is: spine, width: 50 mm}
  volume 2: {parts: {spine: {width: 40 mm}}}
as-found: [{id: covering, over: back}, {id: ties, joins: [board 1, text-block]}]
steps:
  - {adds: lining, onto: back/outer}
  - {adds: wide, spans: {back: 50 mm, board 1: 3 mm}}
  - {adds: fill, in-thickness-of: board 1}
  - {adds: new-board, is: part, onto: back}
""")
    )


@pytest.mark.parametrize(
    ("place", "parts"),
    [
        ("lining", ("back",)),
        ("lining/inner", ("back",)),
        ("covering", ("back",)),
        ("ties", ("board 1", "text-block")),
        ("wide", ("back", "board 1")),
        ("wide/board 1", ("board 1",)),
        ("fill", ("board 1",)),
        ("new-board", ("new-board",)),
        ("sheet/verso", ("sheet",)),
        ("verso", ("verso",)),
        ("volume 2 / spine", ("volume 2/spine",)),
    ],
)
def test_a_place_comes_down_to_its_parts(place: str, parts: tuple[str, ...]) -> None:
    assert below().under([place]) == parts


def test_a_spine_is_known_by_its_name_or_by_what_it_is_said_to_be() -> None:
    found = below()
    assert all(found.is_spine(place) for place in ("back", "spine", "Spine 2", "volume 2/spine"))
    assert not any(found.is_spine(place) for place in ("board 1", "lining", ""))


def test_a_part_is_found_by_its_path_or_by_a_name_borne_once() -> None:
    found = below()
    assert found.part("spine") is found.part("volume 2/spine")
    assert found.part("spine").width is not None
    assert found.part("strap").width is None
