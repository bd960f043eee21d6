"""The server for writing: on this machine only, alive whatever happens, anew after a change."""

from __future__ import annotations

import re
import threading
import time
import urllib.request
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from casebook_mkdocs import serve as serving


class Served:
    """A server on a free port, and what it should build next."""

    def __init__(self, folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
        self.source = folder / "record.md"
        self.source.write_text("first")
        self.notes = folder
        self.server: serving._Server | None = None
        made = serving._Server

        def keep(*arguments: object, **options: object) -> serving._Server:
            self.server = made(*arguments, **{**options, "polling_interval": 0.05})  # type: ignore[arg-type]
            return self.server

        monkeypatch.setattr(serving, "_Server", keep)
        watched = [self.source, folder / "not-there"]
        self.thread = threading.Thread(target=serving.serve, args=(folder, watched, 0, self.make))
        self.thread.start()
        until(lambda: self.server is not None and self.server.serve_thread.is_alive())

    def make(self, stage: Path) -> None:
        text = self.source.read_text()
        if text == "full":
            raise OSError(28, "No space left on device")
        (stage / "index.html").write_text(f"<body>{text}</body>")

    def get(self, address: str = "/index.html") -> str:
        assert self.server is not None
        url = f"http://127.0.0.1:{self.server.server_port}{address}"
        with urllib.request.urlopen(url, timeout=5) as answer:
            return str(answer.read().decode())


def until(there: Callable[[], bool]) -> None:
    end = time.monotonic() + 10
    while not there():
        assert time.monotonic() < end
        time.sleep(0.02)


@pytest.fixture
def served(tmp_path, monkeypatch) -> Iterator[Served]:
    one = Served(tmp_path, monkeypatch)
    yield one
    assert one.server is not None
    one.server.shutdown()
    one.thread.join(10)
    assert not one.thread.is_alive()
    assert not list(tmp_path.glob("serving-*"))


def test_it_listens_on_this_machine_only(served):
    assert served.server.server_address[0] == "127.0.0.1"
    assert "first" in served.get()


def test_a_page_asks_for_a_script_that_reloads_it(served):
    address = re.search(r'src="(/livereload.js\?\d+)"', served.get())
    assert address is not None
    assert "livereload(" in served.get(address[1])


def test_a_change_is_shown(served):
    served.source.write_text("second")
    until(lambda: "second" in served.get())


def test_a_build_that_fails_leaves_the_last_good_site_and_is_told(served, capsys):
    served.source.write_text("full")
    told = ""
    end = time.monotonic() + 10
    while "No space left" not in told and time.monotonic() < end:
        told += capsys.readouterr().err
        time.sleep(0.02)
    assert "the last good site stays" in told
    assert "first" in served.get()
    served.source.write_text("third")
    until(lambda: "third" in served.get())
