"""From a record as a conservator writes it to the words of the way back."""

from __future__ import annotations

from casebook.compute.evidence import evidence
from casebook.compute.layers import replay
from casebook.compute.way_back import WayBack, way_back
from casebook.compute.way_back.sentences import said
from casebook.compute.way_back.words import name
from casebook.model.archive import Case
from casebook.vocabulary import Lexicon, builtin
from tests.builders import record

LEXICON = Lexicon(builtin())


def worked_out(text: str) -> WayBack:
    case = record(Case, text)
    return way_back(replay(case, LEXICON).final, evidence(case, LEXICON), LEXICON)


def test_a_guard_that_was_sewn_through_comes_off_only_when_the_thread_is_cut():
    found = worked_out("""
steps:
  - {do: guard, adds: guards, onto: section, material: kozo-paper, adhesive: wheat-starch-paste}
  - {do: sew, joins: section, to: text-block, held: sewn, cuts: guards}
""")
    text = said(found.take_off["guards"])
    assert "Cut and draw what holds the guards to the text block (sewn)." in text
    assert "Cannot be undone: what was cut or pierced in the guards stays so." in text


def test_what_sits_in_photo_corners_is_slipped_out_and_nothing_is_cut():
    found = worked_out("""
steps:
  - {do: mount, joins: sheet, to: mount, held: photo corners, adhesive: none}
""")
    text = said(found.free["sheet"])
    assert "Slip out or untie what holds the sheet to the mount (photo corners)." in text
    assert "ut and draw" not in text


def test_nobody_is_told_to_wet_an_adhesive_through_a_roller():
    found = worked_out("""
parts: {roller: {material: pine}}
steps:
  - {do: line, adds: lining, onto: sheet/verso, material: kozo-paper, adhesive: wheat-starch-paste}
  - {do: attach, joins: roller, to: lining, adhesive: wheat-starch-paste}
""")
    text = said(found.free["roller"])
    assert "wheat starch paste that holds the roller to the lining" in text
    assert "through the roller" not in text


def test_what_has_soaked_in_is_called_by_where_it_is():
    assert (
        name("wheat-starch-paste in volume 1/board 1")
        == "wheat starch paste in board 1 of volume 1"
    )
    assert name("methyl-cellulose in sheet") == "methyl cellulose in the sheet"


def test_a_tube_that_reaches_onto_a_board_is_slit_beside_its_inner_wall():
    found = worked_out("""
steps:
  - do: make-hollow
    adds: tube
    onto: [spine, board 1]
    walls: "1 on, 2 off"
    material: kraft-paper
    adhesive: wheat-starch-paste
""")
    assert "Slit the tube between the inner wall and board 1." in said(found.free["board 1"])
