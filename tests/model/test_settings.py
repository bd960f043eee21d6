"""The lab's own settings: units, clients, and what pages say of the lab."""

from __future__ import annotations

from casebook.model import settings
from casebook.model.base import Audience, schema
from casebook.model.settings import Client, Settings
from casebook.values.notation import Units
from casebook.values.quantities import Count
from tests.model.reads import holds, reads


def test_every_field_is_documented_and_no_key_is_a_trap():
    holds(settings)


def test_a_lab_says_its_name_and_its_units():
    found = reads(Settings, "{format: 1, name: Invented Bindery, units: both}")
    assert (found.format, found.name) == (Count.parse("1"), "Invented Bindery")
    assert found.units is Units.BOTH


def test_clients_are_for_the_lab_alone():
    found = reads(Settings, "clients: {harbour: {name: Invented Office, contact: unknown}}")
    assert found.clients["harbour"].name == "Invented Office"
    assert {info.seen for info in schema(Client).values()} == {Audience.LAB}
    assert schema(Settings)["clients"].seen is Audience.LAB
