"""What is said of a text that is no date."""

from __future__ import annotations

import pytest

from casebook.values.dates import Date
from casebook.values.fault import NotUnderstood


@pytest.mark.parametrize(
    ("text", "hint"),
    [
        ("undated", "say `not recorded` or `unknown`"),
        ("n.d.", "say `not recorded` or `unknown`"),
        ("later", 'write a day, a year, or a bound such as "after 1850"'),
        ("14/03/2025", "write 2025-03-14"),
        ("03/04/2025", "write 2025-04-03 or 2025-03-04"),
        ("1.2.85", "write year, month and day: 2025-03-14"),
        ("40/40/2025", "write year, month and day: 2025-03-14"),
        ("187x", "write 187X"),
        ("189u", "write 189X"),
        ("19850412", "write 1985-04-12"),
        ("[1667, 1668]", "write [1667,1668]"),
        ("1984?~", "write 1984%"),
        ("2004-06/open", "write 2004-06/.."),
        ("2004-06/unknown", "write 2004-06/"),
        ("1780/90", "write 1780/1790"),
        ("Y1985", "write 1985"),
        ("2025-03-14 / 2025-03-15", "write 2025-03-14/2025-03-15"),
    ],
)
def test_a_usual_slip_is_answered_with_what_to_write(text: str, hint: str) -> None:
    with pytest.raises(NotUnderstood) as caught:
        Date.parse(text)
    assert caught.value.hint == hint
    assert (caught.value.start, caught.value.end) == (0, len(text))
