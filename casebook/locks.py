"""One writer at a time: a lock held by the operating system, with a word on who holds it."""

from __future__ import annotations

import os
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

_PAUSE = 0.05  # seconds between two tries
_held: set[int] = set()


class Busy(Exception):
    """Somebody else holds the lock `path`; `holder` is what they wrote there ("pid 12: build")."""

    def __init__(self, path: Path, holder: str) -> None:
        super().__init__(path, holder)
        self.path = path
        self.holder = holder


@contextmanager
def lock(path: Path, who: str, seconds: float = 0) -> Iterator[None]:
    """Hold the lock `path` for the body; `who` says what for, in a few words.

    Waits up to `seconds`, then raises `Busy`. The lock is the operating system's, not the file: it
    falls with its process, and a file left behind locks nothing.
    """
    path.parent.mkdir(parents=True, exist_ok=True)
    handle = os.open(path, os.O_RDWR | os.O_CREAT, 0o644)
    _held.add(handle)
    try:
        _wait_for(handle, path, seconds)
        _sign(handle, who)
        yield
    finally:
        if handle in _held:  # not so in a forked child, which has let go of it already
            _held.discard(handle)
            _free(handle)


def _wait_for(handle: int, path: Path, seconds: float) -> None:
    """Take the lock, or raise `Busy` when `seconds` have passed."""
    until = time.monotonic() + seconds
    while not _taken(handle):
        if time.monotonic() >= until:
            raise Busy(path, _signature(handle))
        time.sleep(_PAUSE)


def _sign(handle: int, who: str) -> None:
    """Write down who holds the lock."""
    os.ftruncate(handle, 0)
    os.write(handle, f"pid {os.getpid()}: {who}\n".encode())


def _signature(handle: int) -> str:
    """Who holds the lock, as they wrote it themselves."""
    os.lseek(handle, 0, os.SEEK_SET)
    return os.read(handle, 400).decode(errors="replace").strip() or "another process"


if sys.platform == "win32":
    import msvcrt

    _FAR = 1 << 30  # a locked byte cannot be read by others: lock one far behind the text

    def _taken(handle: int) -> bool:
        """Take the lock if it is free."""
        os.lseek(handle, _FAR, os.SEEK_SET)
        try:
            msvcrt.locking(handle, msvcrt.LK_NBLCK, 1)
        except OSError:
            return False
        finally:
            os.lseek(handle, 0, os.SEEK_SET)
        return True

    def _free(handle: int) -> None:
        """Let go of the lock, if it was taken."""
        os.close(handle)

else:
    import fcntl

    def _taken(handle: int) -> bool:
        """Take the lock if it is free."""
        try:
            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            return False
        return True

    def _free(handle: int) -> None:
        """Let go of the lock, if it was taken, even where a child being forked shares it."""
        fcntl.flock(handle, fcntl.LOCK_UN)
        os.close(handle)

    def _let_go() -> None:
        """Close the parent's locks in a forked child, or a worker would outlive and hold them."""
        while _held:
            os.close(_held.pop())

    os.register_at_fork(after_in_child=_let_go)
