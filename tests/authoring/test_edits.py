"""An edit changes its own place and no other byte, or it is not made."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook.authoring.edits import Change, Written, apply, replaced, same
from casebook.source import Mapping, Node, Scalar, Sequence, parse

CASE = "---\ntitle: Day book # of tides\nsteps:\n  - {do: Wash}\n---\nOne # two  \n"


def node_of(text: str) -> Node:
    node = parse(text, "x.yml").node
    assert node is not None
    return node


def value(written: Written, *keys: str) -> Node:
    """The node under a path of keys; an item of a list has its number."""
    node: Node | None = written.root
    for key in keys:
        if isinstance(node, Sequence):
            node = node.items[int(key)]
        else:
            assert isinstance(node, Mapping)
            node = next(one.value for one in node.entries if one.key.text == key)
    assert node is not None
    return node


def rewrite(written: Written, text: str, *keys: str, means: str | None = None) -> Change:
    """The value under some keys written as `text`."""
    old = value(written, *keys)
    new = Scalar(text if means is None else means, old.span, plain=True)
    return Change(*written.offsets(old), text, old.span, old, new)


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
@pytest.mark.parametrize("mark", ["", "\ufeff"])
def test_every_byte_outside_the_place_stays(end, mark):
    text = mark + CASE.replace("\n", end)
    written = Written(text.encode(), "cases/one/case.md")
    after, left = apply(written, [rewrite(written, "wash", "steps", "0", "do")])
    assert after.data.decode() == text.replace("Wash", "wash")
    assert left == ()


def test_an_edit_that_would_say_something_else_is_left_out():
    written = Written(b"a: x\nb: y\n", "lab.yml")
    good, bad = rewrite(written, "z", "a"), rewrite(written, "{y: 1}", "b")
    after, left = apply(written, [bad, good])
    assert (after.text, left) == ("a: z\nb: y\n", (bad,))


def test_an_edit_that_reaches_beyond_its_own_value_is_left_out():
    written = Written(b"a: x\nb: y\n", "lab.yml")
    assert written.changed([rewrite(written, "z\nc: w", "a", means="z")]) is None


def test_an_edit_that_would_lose_a_comment_is_left_out():
    written = Written(b"a: [x, # why\n  y]\n", "lab.yml")
    old = value(written, "a")
    lost = Change(*written.offsets(old), "[x, y]", old.span, old, old)
    assert written.changed([lost]) is None


def test_an_edit_that_would_bring_a_fault_is_left_out():
    written = Written(b"a: x\n", "lab.yml")
    assert written.changed([rewrite(written, "z #w", "a", means="z")]) is None


def test_an_edit_below_the_keys_is_left_out():
    written = Written(CASE.encode(), "cases/one/case.md")
    at = written.text.index("One")
    below = Change(at, at + 3, "Two", written.span(at, at + 3))
    assert apply(written, [below]) == (written, (below,))


def test_a_hash_in_a_text_is_no_comment_and_one_in_prose_is_not_asked_for():
    text = '---\na: "#1" # one\n# two\nb: |\n  # text\n---\n# Title\n'
    assert Written(text.encode(), "cases/one/case.md").comments() == ["# one", "# two"]


def test_white_space_behind_a_block_may_belong_to_it():
    written = Written(b"a: |\n  text  \n  \nb: x  \n", "lab.yml")
    behind = written.text.index("  \n  \nb")
    assert [written.in_block(behind + at) for at in (0, 3)] == [True, True]
    assert not written.in_block(written.text.index("  \n", behind + 8))


@pytest.mark.parametrize("text", ["---\na: b\n---", "---\na: b\n---\n", "---\na: b\n---\n---"])
def test_the_keys_end_at_the_line_that_ends_them(text):
    written = Written(text.encode(), "cases/one/case.md")
    assert written.text[written.top : written.bottom] == "a: b\n"


def test_a_file_that_is_no_text_has_no_keys():
    written = Written(b"\xff\xfea", "lab.yml")
    assert (written.root, written.text) == (None, "")
    assert [one.rule for one in written.faults] == ["encoding"]


def test_a_place_is_told_as_line_and_column():
    written = Written(b"a: x\r\nb: y", "lab.yml")
    span = written.span(9, 10)
    assert (span.line, span.column, span.end_column) == (2, 4, 5)
    assert written.offsets(span) == (9, 10)


def test_a_node_is_replaced_by_its_identity_wherever_it_stands():
    tree = node_of("{a: [x, y], b: {c: x}}")
    assert isinstance(tree, Mapping)
    inner = value_in(tree, "b", "c")
    assert same(replaced(tree, {id(inner): node_of("[z]")}), node_of("{a: [x, y], b: {c: [z]}}"))


def value_in(tree: Mapping, *keys: str) -> Node:
    node: Node = tree
    for key in keys:
        assert isinstance(node, Mapping)
        node = next(one.value for one in node.entries if one.key.text == key)
    return node


@pytest.mark.parametrize(
    ("one", "other", "alike"),
    [
        ("{a: x}", 'a: "x"', True),
        ("[x]", "- x", True),
        ("[x]", "x", False),
        ("{a: x, b: y}", "{b: y, a: x}", False),
        ("[a, x]", "{a: x}", False),
    ],
)
def test_trees_are_alike_in_what_they_say_not_in_how(one, other, alike):
    assert same(node_of(one), node_of(other)) is alike


@given(
    st.lists(
        st.sampled_from([*"'\"{}[]:-#?|>ab \t\r\n\ufeff\u2028", "a: b\n", "\n  - x", "---\n"]),
        max_size=20,
    ).map("".join),
    st.sampled_from(["lab.yml", "cases/one/case.md"]),
)
def test_any_text_is_opened_and_without_a_change_stays(text, file):
    data = (f"---\n{text}\n---\nb" if file.endswith(".md") else text).encode()
    written = Written(data, file)
    after = written.changed([])
    assert after is not None
    assert (after.data, after.comments()) == (data, written.comments())
    assert apply(written, []) == (written, ())
