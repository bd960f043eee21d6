"""How a language orders a day."""

from __future__ import annotations

from casebook.values.day_forms import DayForms, day_forms, fill


def test_a_pattern_is_filled_in_its_own_order_and_keeps_what_it_quotes() -> None:
    assert fill("d 'de' MMMM 'de' y", ["4"], ["marzo"], "2025") == "4 de marzo de 2025"
    assert fill("MMMM d, y", ["4"], ["March"], "2025") == "March 4, 2025"


def test_stretches_name_what_they_share_once() -> None:
    forms = DayForms(day="MMMM d, y", day_of_month="MMMM d")
    assert fill(forms.days(), ["4", "5"], ["March"], "2025") == "March 4–5, 2025"
    across = fill(forms.days_across(), ["28", "2"], ["March", "April"], "2025")
    assert across == "March 28 – April 2, 2025"
    assert fill(forms.months_across(), (), ["March", "April"], "2025") == "March–April 2025"


def test_forms_come_by_the_tag_of_a_language_and_of_a_country_if_it_is_known() -> None:
    assert day_forms("de").months[0] == "Januar"
    assert day_forms("de-AT").months[0] == "Jänner"
    assert day_forms("de-QQ") == day_forms("de")
    assert (day_forms("fr").decimal, day_forms("en-US").decimal) == (",", ".")
