"""What searching costs: bytes of the index for a case, and CPU in Chromium to read it and to answer.

Run `python tests/bench/bench_search.py [CASES ...]` (100 and 1000 unless said). For each number it
builds an archive of that many cases, made from the demo's, and opens its search page from disk.
"""

from __future__ import annotations

import gzip
import subprocess
import sys
import tempfile
from pathlib import Path
from statistics import median

from playwright.sync_api import CDPSession, Page, sync_playwright

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from tests.bench.bench_build import archive
from tests.conftest import OFFLINE, browser_program

ROUNDS = 5
QUESTIONS = (
    "tight back broken joint",
    "wheat starch paste",
    "the spine was lined with paper and linen",
    "marbeld paper",
    "pa",
)
READ = """() => {
  const steps = casebookFinder.build(casebookIndex, casebookWords);
  let step = steps.next();
  while (!step.done) step = steps.next();
  window.index = step.value;
}"""
ANSWER = """(question) => {
  const found = casebookFinder.find(index, question);
  for (const hit of [...found.all, ...found.some].slice(0, 20)) {
    casebookFinder.reasons(index, found, hit);
    casebookFinder.quoted(index, found, hit);
  }
}"""


def thread_time(session: CDPSession) -> float:
    """The CPU of the page's thread so far, in milliseconds."""
    metrics = session.send("Performance.getMetrics")["metrics"]
    return next(float(one["value"]) for one in metrics if one["name"] == "ThreadTime") * 1000


def cost(session: CDPSession, page: Page, script: str, argument: str = "") -> float:
    """The CPU of a script on the page, in milliseconds."""
    before = thread_time(session)
    page.evaluate(script, argument)
    return thread_time(session) - before


def answers(address: str) -> None:
    """Print the CPU of reading the index and of answering each question."""
    with sync_playwright() as playwright:
        chromium = playwright.chromium.launch(
            executable_path=browser_program(), args=["--no-sandbox", *OFFLINE]
        )
        page = chromium.new_page()
        page.goto(address)
        session = page.context.new_cdp_session(page)
        session.send("Performance.enable", {"timeDomain": "threadTicks"})
        print(f"  reading: {cost(session, page, READ):.0f} ms")
        for question in QUESTIONS:
            times = [cost(session, page, ANSWER, question) for _ in range(ROUNDS)]
            print(f"  {median(times):4.0f} ms, at worst {max(times):3.0f}: {question}")
        chromium.close()


def measure(count: int) -> None:
    """Print the size of the index of an archive, and what its search costs."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        archive(folder, count)
        build = [sys.executable, "-m", "casebook", "build"]
        subprocess.run(build, cwd=folder, check=True, capture_output=True)
        scripts = [one.read_bytes() for one in (folder / "site" / "search").glob("*.js")]
        size, packed = (sum(map(len, many)) for many in (scripts, map(gzip.compress, scripts)))
        print(f"{count} cases: {len(scripts)} files, {size / count / 1000:.1f} kB a case,")
        print(f"  {packed / count / 1000:.1f} kB compressed")
        answers((folder / "site" / "search" / "index.html").as_uri())


if __name__ == "__main__":
    for wanted in [int(one) for one in sys.argv[1:]] or [100, 1000]:
        measure(wanted)
