"""What mkdocs.yml may say to the plugin."""

from __future__ import annotations

import pytest

from casebook.model.base import Audience
from casebook_mkdocs.config import Options


def read(**said: object) -> tuple[Options, list[str]]:
    options = Options()
    options.load_dict(said)
    failed, warned = options.validate()
    return options, [str(message) for _, message in (*failed, *warned)]


def test_a_site_is_public_where_nothing_is_said():
    options, faults = read()
    assert (options.audience, options.client, faults) == ("public", "", [])


@pytest.mark.parametrize("audience", list(Audience))
def test_every_audience_may_be_named(audience):
    assert read(audience=audience.value)[1] == []


def test_what_is_no_audience_is_refused():
    assert read(audience="everyone")[1]
