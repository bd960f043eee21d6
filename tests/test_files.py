"""Files are written whole or not at all, and the cache gives back what was put, or nothing."""

from __future__ import annotations

import hashlib
import os
import pickle
import stat
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook import files
from casebook.files import Cache, digest, digest_file, link_or_copy, package_digest, write_whole


def names(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.rglob("*") if path.is_file())


def full_disk(*_: object) -> None:
    raise OSError(28, "No space left on device")


def test_a_digest_is_sha256_of_bytes_text_and_files_alike(tmp_path: Path) -> None:
    # The example "abc" of FIPS 180-2, appendix B.1 (value from memory), and hashlib's own answer.
    assert digest("abc").startswith("ba7816bf8f01cfea")
    (tmp_path / "a").write_bytes("é\n".encode())
    expected = hashlib.sha256("é\n".encode()).hexdigest()
    assert digest("é\n") == digest("é\n".encode()) == digest_file(tmp_path / "a") == expected


def test_a_file_is_written_with_its_text_as_it_is(tmp_path: Path) -> None:
    path = tmp_path / "case.md"
    write_whole(path, "a\r\nb\né")
    assert path.read_bytes() == "a\r\nb\né".encode()
    write_whole(path, b"\x00new")
    assert path.read_bytes() == b"\x00new"
    assert names(tmp_path) == ["case.md"]


@pytest.mark.parametrize("step", ["fsync", "replace"])
def test_a_write_cut_off_leaves_the_old_file_and_nothing_beside_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, step: str
) -> None:
    path = tmp_path / "case.md"
    path.write_text("old")
    monkeypatch.setattr(os, step, full_disk)
    with pytest.raises(OSError, match="No space"):
        write_whole(path, "new")
    assert path.read_text() == "old"
    assert names(tmp_path) == ["case.md"]


def test_a_written_file_keeps_its_mode_and_a_link_stays_a_link(tmp_path: Path) -> None:
    path, link = tmp_path / "real.md", tmp_path / "link.md"
    path.write_text("old")
    path.chmod(0o444 if os.name == "nt" else 0o640)
    before = stat.S_IMODE(path.stat().st_mode)
    link.symlink_to(path)
    write_whole(link, "new")
    assert link.is_symlink()
    assert path.read_text() == "new"
    assert stat.S_IMODE(path.stat().st_mode) == before


def test_a_new_file_can_be_read_by_whom_the_umask_lets(tmp_path: Path) -> None:
    write_whole(tmp_path / "ours", "x")
    (tmp_path / "plain").write_text("x")
    modes = {stat.S_IMODE((tmp_path / name).stat().st_mode) for name in ("ours", "plain")}
    assert len(modes) == 1


def test_a_linked_file_can_be_replaced_without_touching_its_twin(tmp_path: Path) -> None:
    one, two, place = tmp_path / "one", tmp_path / "two", tmp_path / "place"
    one.write_text("1")
    two.write_text("2")
    link_or_copy(one, place)
    assert place.samefile(one)
    link_or_copy(two, place)
    assert (one.read_text(), place.read_text()) == ("1", "2")


def test_where_the_disk_has_no_links_the_file_is_copied(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "one").write_text("1")
    monkeypatch.setattr(os, "link", full_disk)
    link_or_copy(tmp_path / "one", tmp_path / "place")
    assert (tmp_path / "place").read_text() == "1"
    assert not (tmp_path / "place").samefile(tmp_path / "one")


def test_linking_what_is_not_there_says_so(tmp_path: Path) -> None:
    with pytest.raises(FileNotFoundError):
        link_or_copy(tmp_path / "none", tmp_path / "place")


def copy_of_the_package(folder: Path, code: str = "a = 1\n") -> Path:
    """A package of one module and one template; gives the path of its `files.py`."""
    for name, text in (
        ("casebook/files.py", code),
        ("casebook/photos/derive.py", "b = 1\n"),
        ("casebook/notes.txt", "no code"),
        ("site_templates/page.html", "<p>"),
    ):
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text)
    return folder / "casebook" / "files.py"


@pytest.fixture
def package(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A copy of a package that `files` takes for its own."""
    monkeypatch.setattr(files, "__file__", str(copy_of_the_package(tmp_path / "here")))
    return tmp_path / "here"


def fresh_digest(room: str = "") -> str:
    package_digest.cache_clear()
    try:
        return package_digest(room)
    finally:
        package_digest.cache_clear()


@pytest.mark.parametrize("changed", ["casebook/photos/derive.py", "site_templates/page.html"])
def test_the_package_digest_changes_with_code_and_templates(package: Path, changed: str) -> None:
    before = fresh_digest()
    (package / changed).write_text("other")
    assert fresh_digest() != before


def test_the_package_digest_is_the_same_in_any_folder_and_beside_any_notes(
    package: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = fresh_digest()
    (package / "casebook" / "notes.txt").write_text("other")
    assert fresh_digest() == before
    monkeypatch.setattr(files, "__file__", str(copy_of_the_package(tmp_path / "there")))
    assert fresh_digest() == before


def test_the_digest_of_a_room_changes_with_that_room_alone(package: Path) -> None:
    before = fresh_digest("photos")
    (package / "casebook" / "files.py").write_text("other")
    assert fresh_digest("photos") == before
    (package / "casebook" / "photos" / "derive.py").write_text("other")
    assert fresh_digest("photos") != before


def test_templates_are_found_in_a_checkout_and_in_an_installed_package(package: Path) -> None:
    assert files.templates_folder() == package / "site_templates"
    (package / "casebook" / "_templates").mkdir()
    assert files.templates_folder() == package / "casebook" / "_templates"


def test_a_package_without_its_templates_is_told(package: Path) -> None:
    (package / "site_templates").rename(package / "gone")
    with pytest.raises(FileNotFoundError, match="not whole"):
        files.templates_folder()


def test_the_cache_gives_back_what_was_put(tmp_path: Path) -> None:
    cache = Cache(tmp_path, "salt")
    assert cache.get("picture", "key") is None
    cache.put("picture", "key", b"data")
    assert cache.get("picture", "key") == b"data"
    assert cache.path("picture", "key").read_bytes() == b"data"
    assert cache.get("recipe", "key") is None
    assert Cache(tmp_path, "other").get("picture", "key") is None


def test_an_entry_stands_where_the_layout_says_and_holds_no_path(tmp_path: Path) -> None:
    cache = Cache(tmp_path / "cache", "salt")
    cache.put("picture", "a/key with: signs", b"data")
    kind, start, name = cache.path("picture", "a/key with: signs").relative_to(cache.folder).parts
    assert (kind, start, len(name)) == ("picture", name[:2], 64)
    for path in cache.folder.rglob("*"):
        assert path.is_dir() or str(tmp_path).encode() not in path.read_bytes()


@given(st.binary(min_size=1, max_size=50), st.data())
def test_a_damaged_entry_is_a_miss_and_made_again(
    tmp_path_factory: pytest.TempPathFactory, data: bytes, draw: st.DataObject
) -> None:
    cache = Cache(tmp_path_factory.mktemp("cache"), "salt")
    cache.put("kind", "key", data)
    path = cache.path("kind", "key")
    victim = draw.draw(st.sampled_from([path, path.with_name(path.name + ".check")]))
    whole = victim.read_bytes()
    victim.write_bytes(draw.draw(st.binary(max_size=80).filter(lambda other: other != whole)))
    assert cache.get("kind", "key") is None
    cache.put("kind", "key", data)
    assert cache.get("kind", "key") == data


@pytest.mark.parametrize("after", [0, 1])
def test_a_cache_write_cut_off_is_a_miss(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, after: int
) -> None:
    cache, calls, replace = Cache(tmp_path, "salt"), [0], os.replace

    def cut(source: Path, target: Path) -> None:
        if calls[0] == after:
            full_disk()
        calls[0] += 1
        replace(source, target)

    with monkeypatch.context() as patch:
        patch.setattr(os, "replace", cut)
        with pytest.raises(OSError, match="No space"):
            cache.put("kind", "key", b"data")
    assert cache.get("kind", "key") is None
    assert len(names(tmp_path)) == after
    cache.put("kind", "key", b"data")
    assert cache.get("kind", "key") == b"data"


def test_a_deleted_cache_is_empty_and_fills_again(tmp_path: Path) -> None:
    cache = Cache(tmp_path / "cache", "salt")
    cache.put("kind", "key", b"data")
    cache.path("kind", "key").unlink()
    assert cache.get("kind", "key") is None
    cache.put("kind", "key", b"data")
    assert cache.get("kind", "key") == b"data"


def test_many_writers_of_one_entry_do_not_disturb_each_other(tmp_path: Path) -> None:
    cache, data = Cache(tmp_path, "salt"), b"x" * 100_000
    with ThreadPoolExecutor(8) as pool:
        list(pool.map(lambda _: cache.put("kind", "key", data), range(100)))
        seen = set(pool.map(lambda _: cache.get("kind", "key"), range(100)))
    assert seen == {data}
    assert len(names(tmp_path)) == 2


def test_an_entry_that_another_process_keeps_open_is_no_fault_if_it_is_the_same(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    cache = Cache(tmp_path, "salt")
    cache.put("kind", "key", b"data")

    def kept_open(*_: object) -> None:
        raise PermissionError(13, "in use")

    monkeypatch.setattr(os, "replace", kept_open)
    cache.put("kind", "key", b"data")
    with pytest.raises(PermissionError):
        cache.put("kind", "key", b"other")


def test_a_cache_goes_to_a_worker(tmp_path: Path) -> None:
    cache = Cache(tmp_path, "salt")
    assert pickle.loads(pickle.dumps(cache)) == cache
