"""Fields found by the names that rules declare."""

from __future__ import annotations

import pytest

from casebook.model.base import Audience
from casebook.rules.fields import field, records


def test_every_record_type_is_met_from_the_case_the_settings_and_the_recipes():
    assert {"Case", "Step", "Photo", "Material", "Settings", "Client", "Recipe"} <= set(records())


def test_a_field_is_found_with_who_may_see_it():
    assert field("Object.owner").seen is Audience.LAB
    assert field("Case.as_found").key == "as-found"


def test_a_field_that_is_not_there_is_an_error():
    with pytest.raises(KeyError):
        field("Case.colour")
