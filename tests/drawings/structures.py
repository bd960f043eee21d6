"""Structures for tests, made by hand; all invented."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from xml.etree import ElementTree

from hypothesis import strategies as st

from casebook.compute.structure import Bond, How, Since, Structure, Thing
from casebook.drawings.facts import Facts
from casebook.drawings.words import Drawing
from casebook.vocabulary import Lexicon, builtin

LEXICON = Lexicon(builtin())


@dataclass(frozen=True)
class Moment:
    step: int
    episode: str
    structure: Structure


def original(name: str, **more) -> Thing:
    return Thing(name, name, part=True, **more)


def found(name: str, *materials: str, **more) -> Thing:
    return Thing(name, more.pop("of", name), since=Since.FOUND, materials=materials, **more)


def added(name: str, step: int, *materials: str, **more) -> Thing:
    of = more.pop("of", name)
    return Thing(name, of, since=Since.ADDED, materials=materials, step=step, **more)


def stuck(lower: str, upper: str, *adhesives: str, **more) -> Bond:
    return Bond(lower, upper, How.STUCK, adhesives, since=more.pop("since", Since.ADDED), **more)


def over(base: Structure, *new: Thing | Bond, without: tuple[str, ...] = ()) -> Structure:
    """A structure with more things and bonds; `without` names what goes, with its bonds."""
    things = {name: one for name, one in base.things.items() if name not in without}
    things |= {one.name: one for one in new if isinstance(one, Thing)}
    bonds = [b for b in base.bonds if b.lower not in without and b.upper not in without]
    bonds += [one for one in new if isinstance(one, Bond)]
    return replace(base, things=things, bonds=tuple(bonds))


def moments(*structures: Structure) -> tuple[Moment, ...]:
    return tuple(Moment(n, str(n) if n else "", one) for n, one in enumerate(structures))


def _ledger() -> tuple[Moment, ...]:
    board1 = original("board 1", materials=("pasteboard",), thickness_um=3500)
    board2 = original("board 2", materials=("pasteboard",), thickness_um=3500)
    start = over(
        Structure(),
        *(original("text-block"), original("spine", width_um=68_000), board1, board2),
        Bond("text-block", "spine", How.GROWN),
        found("old-glue", "animal-glue"),
        stuck("spine", "old-glue", since=Since.FOUND),
        found("reback-leather", "calf"),
        *(
            stuck(one, "reback-leather", "animal-glue", since=Since.FOUND)
            for one in ("old-glue", "board 1", "board 2")
        ),
        original("title-label", materials=("leather",)),
        stuck("reback-leather", "title-label", since=Since.FOUND),
    )
    label_off = over(
        start, original("title-label", materials=("leather",)), without=("title-label",)
    )
    leather_off = over(label_off, without=("reback-leather",))
    rest = found("old-glue", "animal-glue", partly=True, where="in the folds of sections 20 to 26")
    glue_off = over(leather_off, rest)
    tissue = over(
        glue_off,
        added("release-lining", 4, "tengujo", splits=True),
        stuck("spine", "release-lining", "wheat-starch-paste"),
    )
    paper = over(
        tissue,
        added("second-lining", 5, "oakum-spine-paper", width_um=74_000),
        stuck("release-lining", "second-lining", "wheat-starch-paste"),
    )
    zones = {"spine": 75_000, "board 1": 40_000, "board 2": 40_000}
    boards = ("board 1", "board 2")
    cloth = over(
        paper,
        *(
            added(
                f"cloth-lining/{one}", 6, "linen", of="cloth-lining", zone=one, width_um=zones[one]
            )
            for one in zones
        ),
        *(Bond("cloth-lining/spine", f"cloth-lining/{one}", How.JOINT) for one in boards),
        stuck("second-lining", "cloth-lining/spine", "polyvinyl-acetate"),
    )
    fixed = over(cloth, *(stuck(one, f"cloth-lining/{one}", "polyvinyl-acetate") for one in boards))
    bands = [original(f"endband {one}", materials=("silk",)) for one in ("head", "tail")]
    endbands = over(
        fixed,
        *bands,
        *(stuck("cloth-lining/spine", one.name, "polyvinyl-acetate", reused=True) for one in bands),
    )
    spine_paper = over(
        endbands,
        *(
            added(
                f"spine-paper/{one}",
                9,
                "oakum-spine-paper",
                of="spine-paper",
                zone=one,
                width_um=min(zones[one], 75_000) - 6_000 * (one != "spine"),
            )
            for one in zones
        ),
        *(Bond("spine-paper/spine", f"spine-paper/{one}", How.JOINT) for one in boards),
        *(
            stuck(f"cloth-lining/{one}", f"spine-paper/{one}", "wheat-starch-paste")
            for one in zones
        ),
    )
    label_on = over(
        spine_paper, stuck("spine-paper/spine", "title-label", "wheat-starch-paste", reused=True)
    )
    return moments(
        *(start, label_off, leather_off, glue_off, tissue, paper, cloth, fixed, endbands),
        *(spine_paper, label_on),
    )


LEDGER = _ledger()
"""A ledger: leather and glue off, three linings, boards stuck to the cloth, a paper spine."""

LEDGER_FACTS = Facts(
    rises={"spine": 14_000},
    weights={"release-lining": "5 g/m²", "cloth-lining": "110 g/m²"},
    spines=frozenset({"spine"}),
    lexicon=LEXICON,
)


def _chart() -> tuple[Moment, ...]:
    start = over(
        Structure(),
        original("sheet", materials=("laid-paper",)),
        found("brown-strips", "kraft-paper", patches=True),
        stuck("sheet", "brown-strips", "animal-glue", face="verso", since=Since.FOUND),
    )
    bare = over(start, without=("brown-strips",))
    mends = over(
        bare,
        added("fold-mends", 2, "kozo-paper", patches=True, where="splits of the folds"),
        stuck("sheet", "fold-mends", "wheat-starch-paste", face="verso"),
    )
    fills = over(
        mends,
        added("fills", 3, "laid-paper", patches=True),
        stuck("sheet", "fills", "wheat-starch-paste", within=True),
    )
    lined = over(
        fills,
        added("sheet-lining", 4, "oakum-lining-paper", width_um=1_110_000),
        stuck("sheet", "sheet-lining", "wheat-starch-paste", face="verso"),
    )
    return moments(start, bare, mends, fills, lined)


CHART = _chart()
"""A chart: strips off the back, folds mended, holes filled, lined."""

CHART_FACTS = Facts(widths={"sheet": 1_102_000}, weights={"fold-mends": "9 g/m²"}, lexicon=LEXICON)


def _hollow() -> tuple[Moment, ...]:
    start = over(
        Structure(), original("spine", width_um=40_000), original("board 1"), original("board 2")
    )
    lined = over(
        start, added("tissue", 1, "tengujo"), stuck("spine", "tissue", "wheat-starch-paste")
    )
    tube = over(
        lined,
        added("tube/inner", 2, "kraft-paper", of="tube", wall="inner"),
        added("tube/outer", 2, "kraft-paper", of="tube", wall="outer"),
        Bond("tube/inner", "tube/outer", How.FOLD, since=Since.ADDED, step=2),
        stuck("tissue", "tube/inner", "wheat-starch-paste"),
    )
    leather = over(
        tube,
        added("leather", 3, "calf"),
        *(
            stuck(one, "leather", "wheat-starch-paste")
            for one in ("tube/outer", "board 1", "board 2")
        ),
    )
    return moments(start, lined, tube, leather)


HOLLOW = _hollow()
"""A flat spine with a hollow tube under new leather."""


def high(count: int, at_once: bool = False) -> tuple[Moment, ...]:
    """Layers over spine and boards, one more in each state; each pair taken off again if not at once."""
    parts = [original(name, width_um=50_000) for name in ("spine", "board 1", "board 2")]
    structures = [over(Structure(), *parts)]
    below = "spine"
    for n in range(1, count + 1):
        name = f"lining-number-{n}"
        zones = [
            added(f"{name}/{zone.name}", n, "linen", of=name, zone=zone.name, width_um=50_000)
            for zone in parts
        ]
        bonds = [stuck(zone.name, f"{name}/{zone.name}", "polyvinyl-acetate") for zone in parts[1:]]
        joints = [Bond(f"{name}/spine", f"{name}/{zone.name}", How.JOINT) for zone in parts[1:]]
        first = stuck(below, f"{name}/spine", "wheat-starch-paste")
        structures.append(over(structures[-1], *zones, *bonds, *joints, first))
        below = f"{name}/spine"
    return moments(*(structures if not at_once else structures[-1:]))


NAMES = (
    "spine",
    "board 1",
    "board 2",
    "sheet",
    "text-block",
    "a",
    "b/spine",
    "b/board 1",
    "c/inner",
    "c/outer",
    "<&\"'\x00\ud800",
)


@st.composite
def structures(draw: st.DrawFn) -> Structure:
    """Any structure, sound or not: rings, bonds in all directions, hostile names."""
    names = draw(st.lists(st.sampled_from(NAMES), unique=True, min_size=1))
    things = {name: draw(_things(name)) for name in names}
    some = st.sampled_from(names)
    bonds = draw(
        st.lists(
            st.builds(
                Bond,
                some,
                some,
                st.sampled_from(How),
                adhesives=st.sampled_from([(), ("wheat-starch-paste",), ("x<y", "pva")]),
                held=st.sampled_from([(), ("sewn",)]),
                face=st.sampled_from(["", "inner", "verso", "outer"]),
                opened=st.sampled_from([(), (1,), (1, 2)]),
                within=st.booleans(),
                guessed=st.booleans(),
            ),
            max_size=12,
        )
    )
    covers = draw(st.lists(st.tuples(some, some), max_size=3))
    return Structure(things, tuple(bonds), tuple(covers))


def _things(name: str) -> st.SearchStrategy[Thing]:
    of, _, zone = name.partition("/")
    return st.builds(
        Thing,
        st.just(name),
        st.just(of),
        zone=st.just(zone if zone.startswith(("spine", "board")) else ""),
        wall=st.just(zone if zone in ("inner", "outer") else ""),
        part=st.just(name in NAMES[:5]),
        since=st.sampled_from(Since),
        materials=st.sampled_from([(), ("linen",), ("calf", "<goat>")]),
        partly=st.booleans(),
        patches=st.booleans(),
        temporary=st.booleans(),
        splits=st.booleans(),
        thickness_um=st.sampled_from([None, 1, 400, 90_000]),
        width_um=st.sampled_from([None, 1, 70_000, 9_000_000]),
        step=st.integers(0, 9),
    )


stories = st.lists(structures(), min_size=1, max_size=5).map(lambda found: moments(*found))
"""The states of any treatment."""


def parsed(drawing: Drawing) -> ElementTree.Element:
    """A drawing read as XML, which it must be; ids are borne once, and every one that is used is there."""
    top = ElementTree.fromstring(drawing.svg)
    ids = [one.get("id") for one in top.iter() if one.get("id")]
    assert len(ids) == len(set(ids))
    used = re.findall(r'url\(#([^)]+)\)|href="#([^"]+)"', drawing.svg)
    assert {a or b for a, b in used} <= set(ids)
    assert "style=" not in drawing.svg
    assert "nan" not in drawing.svg
    assert "inf" not in drawing.svg.replace("infill", "")
    return top


def seen_at_end(drawing: Drawing) -> set[str]:
    """The layers that a drawing shows without scripts."""
    groups = [one for one in parsed(drawing).iter() if one.get("data-layer")]
    return {one.get("data-layer", "") for one in groups if one.get("display") != "none"}
