"""The English words in which a record may write its dates."""

from __future__ import annotations

from casebook.values.date_english import MONTHS, SEASONS
from casebook.values.dates import Date


def test_each_month_and_season_is_read_from_its_name() -> None:
    for number, month in enumerate(MONTHS, 1):
        assert Date.parse(f"14 {month} 2025").edtf == f"2025-{number:02d}-14"
    for code, season in enumerate(SEASONS, 21):
        assert Date.parse(f"{season} 1890").edtf == f"1890-{code}"
