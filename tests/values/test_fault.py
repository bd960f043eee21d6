"""The one error of the values says what, what instead, and where."""

from __future__ import annotations

from casebook.values.fault import NotUnderstood


def test_a_fault_points_at_one_character_where_no_end_is_given() -> None:
    fault = NotUnderstood("no unit", start=3)
    assert (fault.start, fault.end, fault.hint) == (3, 4, "")


def test_a_fault_is_a_value_error_with_its_message() -> None:
    fault = NotUnderstood("no unit", hint="write mm", start=0, end=5)
    assert isinstance(fault, ValueError)
    assert (str(fault), fault.hint, fault.end) == ("no unit", "write mm", 5)
