"""Of what is private in a photo nothing is found in any byte of a built site, in any form."""

from __future__ import annotations

import base64
from pathlib import Path

import pytest

from casebook import flow
from casebook.files import digest
from casebook.model.base import Audience
from tests.photos.phones import FILES, SECRET
from tests.photos.test_derive import PLANTED, SECRETS
from tests.stories.archives import edit, small_archive

MAKERS = {name: make for name, (make, _) in (*PLANTED.items(), *FILES.items())}
SECRET_NAMES = {name: f"owner-{name.partition('.')[2]}-{name}" for name in MAKERS}
"""The file names tell something too, and only the lab may know it."""


def built(root: Path, audience: Audience) -> dict[str, bytes]:
    """Every file of an archive's site, by address."""
    loaded = flow.load(root)
    shown = flow.show(loaded, audience)
    pictures = flow.derive(shown, loaded, None, lambda _done, _total: None)
    site = flow.publish(shown, pictures)
    pages = {page.address: page.body().encode() for page in site.pages}
    frames = {f"frame of {page.address}": repr(page.frame()).encode() for page in site.pages}
    made = {one.address: one.made() for one in site.assets}
    assets = {
        name: one.read_bytes() if isinstance(one, Path) else one for name, one in made.items()
    }
    return {**pages, **frames, **assets}


@pytest.fixture(scope="module")
def archive(tmp_path_factory: pytest.TempPathFactory) -> Path:
    root = small_archive(tmp_path_factory.mktemp("private") / "archive")
    case = root / "cases" / "2025-001"
    for name, make in MAKERS.items():
        (case / "photos" / SECRET_NAMES[name]).write_bytes(make())
    listed = ", ".join(f"{{file: {name}, stage: before}}" for name in SECRET_NAMES.values())
    edit(case, "photos: [", f"photos: [{listed}, ")
    return root


@pytest.mark.parametrize("audience", [Audience.PUBLIC, Audience.LAB])
def test_no_planted_tag_is_found_in_the_bytes_of_the_site(
    archive: Path, audience: Audience
) -> None:
    found = built(archive, audience)
    pictures = [name for name in found if name.endswith((".jpg", ".webp"))]
    assert len(pictures) >= 2 * len(PLANTED) + 2
    for secret in (*SECRETS.values(), SECRET):
        for form in (secret, base64.b64encode(secret)[:-2], secret.decode().encode("utf-16-le")):
            assert [
                name
                for name, data in found.items()
                if form in data or form.decode("latin-1") in name
            ] == []


def test_no_name_of_an_original_is_found_nor_its_digest(archive: Path) -> None:
    found = built(archive, Audience.PUBLIC)
    photos = archive / "cases" / "2025-001" / "photos"
    names = [
        *SECRET_NAMES.values(),
        *(digest((photos / one).read_bytes()) for one in SECRET_NAMES.values()),
    ]
    for name in names:
        whole = name.encode()
        assert [place for place, data in found.items() if whole in data or name in place] == []
        assert [place for place, data in found.items() if whole[:20] in data] == []
