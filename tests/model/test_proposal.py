"""The proposal as a conservator writes it."""

from __future__ import annotations

from casebook.model.proposal import Choice, Proposal
from casebook.reading import read
from casebook.source import parse

TEXT = """
use: reading-room
options:
  - {name: toned paper reback, merits: "thin, light", time: 14 h, outcome: chosen}
  - {name: leather reback, outcome: rejected}
decided: {date: 2025-02-10, by: [owner], how: letter}
"""


def test_options_and_approval_are_read() -> None:
    node = parse(TEXT, "case.md").node
    assert node is not None
    proposal, faults = read(Proposal, node, "a")
    assert faults == ()
    assert isinstance(proposal.options, tuple)
    assert [one.outcome for one in proposal.options] == [Choice.CHOSEN, Choice.REJECTED]
    assert proposal.options[0].merits == "thin, light"
