"""The whole journey in four verbs: load, check, derive, publish."""

from __future__ import annotations

import datetime
from collections.abc import Callable, Iterable, Mapping
from concurrent.futures import Executor
from dataclasses import replace
from pathlib import Path

from casebook.audiences import redact
from casebook.diagnostics import Diagnostic, Severity
from casebook.files import Cache, package_digest
from casebook.loading import Loaded, load_archive
from casebook.model.archive import Redacted
from casebook.model.base import Audience
from casebook.output.contexts import Link
from casebook.output.kept import Store
from casebook.output.pictures import Pictures
from casebook.output.publish import publish_site
from casebook.output.site import Site
from casebook.output.whole import Wishes
from casebook.photos.derive import derive_all
from casebook.rules import gaps, run


def cache_of(root: Path) -> Cache:
    """The archive's cache of pictures: safe to delete, keyed by content and recipe."""
    return Cache(root / ".casebook" / "cache", package_digest("photos"))


def load(root: Path) -> Loaded:
    """Read an archive's folder; a user's fault is a diagnostic beside the data."""
    return load_archive(root, cache_of(root))


def check(loaded: Loaded, today: datetime.date) -> tuple[Diagnostic, ...]:
    """What the reader and the rules have to say of the whole archive."""
    return (*loaded.diagnostics, *run(loaded.archive, today, loaded.folders))


def show(
    loaded: Loaded, audience: Audience, client: str = "", leave_out: frozenset[str] = frozenset()
) -> Redacted:
    """What one audience may see, without the cases that are left out."""
    kept = tuple(case for case in loaded.archive.cases if case.id not in leave_out)
    return redact(replace(loaded.archive, cases=kept), audience, client)


def derive(
    redacted: Redacted,
    loaded: Loaded,
    executor: Executor | None,
    report: Callable[[int, int], None],
) -> Pictures:
    """The pictures of every photo that may be seen; only what the cache lacks is made."""
    wanted = {image.digest for one in redacted.archive.images.values() for image in one.values()}
    jobs = [(one, loaded.originals[one]) for one in sorted(wanted)]
    cache = cache_of(loaded.root)
    return Pictures(derive_all(jobs, cache, executor, report), cache)


def publish(
    redacted: Redacted,
    pictures: Pictures,
    *,
    site_url: str = "",
    own_pages: Iterable[tuple[str, str]] = (),
    diagnostics: Mapping[str, tuple[str, ...]] | None = None,
    store: Store | None = None,
) -> Site:
    """The site as a value; no page is written, bodies are made on demand.

    `own_pages` are title and address of hand-written pages, `diagnostics` the lab's messages by
    case id: they are shown to the lab alone. `store` keeps what is dear to work out.
    """
    archive, audience = redacted.archive, redacted.audience
    found = {
        case.id: gaps(case, archive, audience, withheld=case.id in redacted.withheld)
        for case in archive.cases
    }
    wishes = Wishes(
        site_url=site_url,
        own_pages=tuple(Link(title, address) for title, address in own_pages),
        gaps=found,
        faults=(diagnostics or {}) if audience is Audience.LAB else {},
        store=store,
    )
    return publish_site(redacted, pictures, wishes)


def broken_cases(loaded: Loaded, diagnostics: Iterable[Diagnostic]) -> frozenset[str]:
    """The ids of cases that have an error."""
    faulty = {one.case for one in diagnostics if one.severity is Severity.ERROR}
    return frozenset(one for one, folder in loaded.folders.items() if folder in faulty)
