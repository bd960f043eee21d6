"""One process at a time holds a lock, and whoever comes second is told who it is."""

from __future__ import annotations

import os
import subprocess
import sys
import threading
import time
from pathlib import Path

import pytest

from casebook.locks import Busy, lock

HOLD = """
import sys
from pathlib import Path
from casebook.locks import lock
with lock(Path(sys.argv[1]), "build for public"):
    print("held", flush=True)
    sys.stdin.read()
"""


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "notes" / "site.lock"


def holder(path: Path) -> subprocess.Popen[str]:
    """Another process that holds the lock until its input ends."""
    process = subprocess.Popen(
        [sys.executable, "-c", HOLD, str(path)],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
    )
    assert process.stdout is not None
    assert process.stdout.readline() == "held\n"
    return process


def test_a_lock_can_be_taken_again_after_it_was_let_go(path: Path) -> None:
    for _ in range(3):
        with lock(path, "build"):
            assert path.exists()


def test_who_comes_second_is_told_who_holds_it_and_since_what(path: Path) -> None:
    with holder(path) as process:
        with pytest.raises(Busy) as caught, lock(path, "check"):
            raise AssertionError
        assert caught.value.holder == f"pid {process.pid}: build for public"
        assert caught.value.path == path
        process.communicate("")
    with lock(path, "check"):
        assert path.read_text() == f"pid {os.getpid()}: check\n"


def test_two_threads_of_one_process_exclude_each_other(path: Path) -> None:
    with lock(path, "one"), pytest.raises(Busy), lock(path, "two"):
        raise AssertionError


def test_a_lock_is_waited_for(path: Path) -> None:
    free = threading.Event()

    def hold() -> None:
        with lock(path, "first"):
            free.set()
            time.sleep(0.15)

    thread = threading.Thread(target=hold)
    thread.start()
    free.wait()
    with lock(path, "second", seconds=10):
        assert "second" in path.read_text()
    thread.join()


def test_a_killed_holder_holds_nothing(path: Path) -> None:
    with holder(path) as process:
        process.kill()
    assert "build for public" in path.read_text()
    with lock(path, "next"):
        assert "next" in path.read_text()


def test_a_body_that_fails_lets_go(path: Path) -> None:
    with pytest.raises(ZeroDivisionError), lock(path, "one"):
        raise ZeroDivisionError
    with lock(path, "two"):
        assert "two" in path.read_text()


FORKED = """
import os, sys
from pathlib import Path
from casebook.locks import lock
with lock(Path(sys.argv[1]), "parent"):
    if hasattr(os, "fork") and os.fork() == 0:
        sys.stdin.read()
        os._exit(0)
    print("held", flush=True)
    {then}
print("let go", flush=True)
sys.stdin.read()
"""


@pytest.mark.parametrize("then", ["pass", "sys.stdin.read()"])
def test_a_worker_that_lives_on_does_not_hold_its_parents_lock(path: Path, then: str) -> None:
    with subprocess.Popen(
        [sys.executable, "-c", FORKED.format(then=then), str(path)],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
    ) as process:
        assert process.stdout is not None
        assert process.stdout.readline() == "held\n"
        if then == "pass":
            assert process.stdout.readline() == "let go\n"
        else:
            process.kill()
        with lock(path, "next", seconds=5):
            assert "next" in path.read_text()
        process.communicate("")
