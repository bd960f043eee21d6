"""The whole journey, from a folder on disk to a site."""

from __future__ import annotations

import datetime
from pathlib import Path

from casebook import flow
from casebook.model.base import Audience
from tests.builders import RICH

TODAY = datetime.date(2026, 1, 1)


def folder(root: Path) -> Path:
    case = root / "cases" / "2025-031"
    case.mkdir(parents=True)
    text = RICH.split("photos:\n")[0]
    (case / "case.md").write_text(f"---{text}---\nThe story of it.\n", encoding="utf-8")
    (root / "lab.yml").write_text(
        "format: 1\nname: Invented bindery\nclients: {kestrel-trust: {name: Invented}}\n", "utf-8"
    )
    return root


def test_a_folder_becomes_a_site(tmp_path: Path) -> None:
    loaded = flow.load(folder(tmp_path))
    redacted = flow.show(loaded, Audience.PUBLIC)
    pictures = flow.derive(redacted, loaded, None, lambda done, of: None)
    bodies = {one.address: one.body() for one in flow.publish(redacted, pictures).pages}
    assert "The story of it." in bodies["cases/2025-031/index.html"]
    assert not [one for one in flow.check(loaded, TODAY) if one.severity == "error"]


def test_a_case_can_be_left_out(tmp_path: Path) -> None:
    loaded = flow.load(folder(tmp_path))
    assert flow.show(loaded, Audience.LAB, leave_out=frozenset({"2025-031"})).archive.cases == ()


def test_only_the_lab_is_told_of_faults(tmp_path: Path) -> None:
    loaded = flow.load(folder(tmp_path))
    for audience in (Audience.LAB, Audience.PUBLIC):
        redacted = flow.show(loaded, audience)
        pictures = flow.derive(redacted, loaded, None, lambda done, of: None)
        told = {"2025-031": ("a fault for the lab",)}
        made = flow.publish(redacted, pictures, diagnostics=told)
        bodies = "".join(one.body() for one in made.pages)
        assert ("a fault for the lab" in bodies) is (audience is Audience.LAB)
