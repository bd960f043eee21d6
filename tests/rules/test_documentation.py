"""Who wrote the record, when, what for, from what."""

from __future__ import annotations

import pytest

from casebook.rules import NAMED
from tests.rules.written import messages


@pytest.mark.parametrize("name", ["writer-of-record", "date-of-record", "purpose-of-record"])
def test_a_record_without_written_is_asked_for_each(name: str):
    assert len(messages(NAMED[name], "# no written")) == 1


def test_a_bench_record_is_not_asked_what_it_was_written_up_from():
    assert messages(NAMED["origin-of-record"]) == []
