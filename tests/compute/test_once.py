"""What was just worked out is not worked out again."""

from __future__ import annotations

from casebook.compute.once import LATEST, once


class Thing:
    """Something that is dear to compare: here it may not be compared at all."""

    def __eq__(self, other: object) -> bool:
        raise AssertionError("compared")

    __hash__ = None  # type: ignore[assignment]


def counted():
    calls = []

    @once
    def work(thing: Thing, more: str = "") -> list:
        calls.append(thing)
        return [thing, more]

    return work, calls


def test_the_very_same_thing_is_worked_out_once() -> None:
    work, calls = counted()
    thing = Thing()
    assert work(thing) is work(thing)
    assert len(calls) == 1


def test_an_equal_thing_that_is_another_is_worked_out_again() -> None:
    work, calls = counted()
    work(Thing())
    work(Thing())
    assert len(calls) == 2


def test_other_arguments_are_another_question() -> None:
    work, calls = counted()
    thing = Thing()
    assert work(thing)[1] == ""
    assert work(thing, more="a")[1] == "a"
    assert len(calls) == 2


def test_only_the_last_few_are_kept() -> None:
    work, calls = counted()
    things = [Thing() for _ in range(LATEST + 1)]
    for thing in (*things, things[0], things[0]):
        work(thing)
    assert len(calls) == LATEST + 2


def test_a_name_and_a_docstring_stay() -> None:
    @once
    def work() -> int:
        """Say one."""
        return 1

    assert (work.__name__, work.__doc__, work()) == ("work", "Say one.", 1)
