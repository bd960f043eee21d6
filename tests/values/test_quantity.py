"""What holds for every kind of quantity, whatever text it is given."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook.values.fault import NotUnderstood
from casebook.values.quantities import Length, Ratio
from casebook.values.quantity import Quantity
from tests.values.quantity_texts import ANY_TEXT, KINDS, MEASURES, measures, ratios


@given(text=ANY_TEXT, kind=st.sampled_from(KINDS))
def test_any_text_is_read_or_refused_with_offsets_and_a_hint(
    text: str, kind: type[Quantity] | type[Ratio]
) -> None:
    try:
        value = kind.parse(text)
    except NotUnderstood as fault:
        assert fault.message and fault.hint
        assert 0 <= fault.start < fault.end
        assert fault.start <= len(text) and fault.end <= len(text) + 1
    else:
        assert str(value) == text.strip()
        assert kind.parse(value.canonical()) == value


@given(data=st.data(), kind=st.sampled_from(MEASURES))
def test_the_canonical_form_reads_back_equal(data: st.DataObject, kind: type[Quantity]) -> None:
    value = data.draw(measures(kind))
    assert kind.parse(value.canonical()) == value
    assert str(value) == value.canonical()


@given(value=ratios())
def test_the_canonical_form_of_a_ratio_reads_back_equal(value: Ratio) -> None:
    assert Ratio.parse(value.canonical()) == value


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.__name__)
@pytest.mark.parametrize("text", ["", " ", "1" * 100_000, "1 " * 5_000, "(" * 9_999, "1/" * 5_000])
def test_empty_and_huge_texts_are_refused(kind: type[Quantity] | type[Ratio], text: str) -> None:
    with pytest.raises(NotUnderstood):
        kind.parse(text)


def test_the_printed_form_is_kept_but_makes_no_difference() -> None:
    inches, metric = Length.parse("  1 in "), Length.parse("25.4 mm")
    assert (str(inches), str(metric)) == ("1 in", "25.4 mm")
    assert inches == metric
    assert len({inches, metric}) == 1


def test_a_plain_value_is_exact_and_no_range() -> None:
    value = Length.parse("16 1/4 in")
    assert (value.low, value.high, value.exact) == (Fraction("412.75"),) * 3
    assert value.least == Fraction("412.75")
    assert not value.is_range


@pytest.mark.parametrize(
    ("text", "low", "high", "least"),
    [("2-4 mm", 2, 4, 2), ("at least 3 mm", 3, None, 3), ("up to 3 mm", None, 3, 0)],
)
def test_a_range_has_no_exact_value(
    text: str, low: Fraction | None, high: Fraction | None, least: Fraction
) -> None:
    value = Length.parse(text)
    assert (value.low, value.high, value.least) == (low, high, least)
    assert value.is_range and value.exact is None
