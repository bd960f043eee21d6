"""From an archive's folder to its record: every file read, every fault of every case kept."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from casebook.diagnostics import Diagnostic, Severity, Span
from casebook.files import Cache
from casebook.model.archive import LAB, Archive, Case
from casebook.model.base import items, known
from casebook.model.photos import Image
from casebook.model.settings import Settings
from casebook.model.treatment import Episode, Recipe
from casebook.model.vocabulary import KINDS, Terms
from casebook.photos.find import find_logo, find_photos
from casebook.photos.inspect import Inspected
from casebook.photos.suggest import Album, suggestions
from casebook.reading import did_you_mean, read
from casebook.source import Mapping as MappingNode
from casebook.source import parse, read_document
from casebook.values.language import known_languages, language
from casebook.vocabulary import builtin, extend
from casebook.vocabulary.recipes import read_recipes, with_recipes

RESERVED = re.compile(r"con|prn|aux|nul|com[0-9]|lpt[0-9]")
ID = re.compile(r"[a-z0-9](?:[a-z0-9-]{0,38}[a-z0-9])?")
FORMAT = 1


@dataclass(frozen=True, slots=True)
class Loaded:
    """What an archive's folder holds: the record, its faults, and where each original lies.

    `originals` gives the path of each image by its digest, `folders` each case's folder by its id.
    A diagnostic names a case by its folder.
    """

    root: Path
    archive: Archive
    diagnostics: tuple[Diagnostic, ...]
    originals: Mapping[str, Path]
    folders: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class _Folder:
    """One case's folder as read: the case, its faults, its images and their paths."""

    path: Path
    case: Case
    faults: tuple[Diagnostic, ...]
    images: Mapping[str, Image]
    originals: Mapping[str, Path]
    inspected: Mapping[str, Inspected]


def load_archive(root: Path, cache: Cache) -> Loaded:
    """Read the whole archive in `root`. A user's fault is a diagnostic, never an exception."""
    settings, faults = _settings(root)
    logo = find_logo(settings, root, cache)
    terms, recipes, more = _vocabulary(root)
    paths = _case_folders(root)
    folders = [_folder(one, root, recipes, cache) for one in paths if _has_case(one)]
    cases, clashes = _unique(folders)
    archive = Archive(
        settings=settings,
        terms=terms,
        cases=tuple(cases),
        recipes=recipes,
        images={one.case.id: one.images for one in reversed(folders)} | {LAB: logo.images},
    )
    found = (*faults, *more, *logo.diagnostics, *_no_cases(root, paths), *clashes)
    albums = (Album(one.path.name, one.case, one.inspected) for one in folders)
    said = (*(fault for one in folders for fault in one.faults), *suggestions(albums))
    return Loaded(
        root=root,
        archive=archive,
        diagnostics=(*found, *said),
        originals={**logo.originals, **{k: p for one in folders for k, p in one.originals.items()}},
        folders={one.case.id: one.path.name for one in reversed(folders)},
    )


def _has_case(path: Path) -> bool:
    return (path / "case.md").is_file()


def _no_cases(root: Path, paths: list[Path]) -> Iterator[Diagnostic]:
    """A folder in `cases/` that holds no case, and an archive that holds none."""
    for name in (path.name for path in paths if not _has_case(path)):
        message = f"`cases/{name}` has no file `case.md`"
        hint = "every case is a folder with a `case.md`; `casebook new` starts one"
        yield Diagnostic("no-case-file", Severity.ERROR, message, None, hint, name)
    if not paths and (root / "lab.yml").is_file():
        message = "there is no case in `cases/` yet"
        hint = "`casebook new` starts one"
        yield Diagnostic("no-cases", Severity.SUGGESTION, message, None, hint)


def _settings(root: Path) -> tuple[Settings, tuple[Diagnostic, ...]]:
    path = root / "lab.yml"
    if not path.is_file():
        message = "there is no `lab.yml` here, so this folder is not an archive"
        hint = "go to the archive's folder, or make one with `casebook init FOLDER`"
        return Settings(), (Diagnostic("no-lab", Severity.ERROR, message, None, hint),)
    text, undecoded = _decode(path, root, "")
    parsed = parse(text, "lab.yml")
    if parsed.node is None:
        return Settings(), (*undecoded, *parsed.diagnostics)
    settings, faults = read(Settings, parsed.node, "")
    return settings, (
        *undecoded,
        *parsed.diagnostics,
        *faults,
        *_format(settings),
        *_language(settings),
    )


def _format(settings: Settings) -> Iterator[Diagnostic]:
    if str(settings.format or "") != str(FORMAT):
        message = f"`format` must be {FORMAT}: this version reads no other"
        hint = f"write `format: {FORMAT}` in lab.yml"
        yield Diagnostic("format", Severity.ERROR, message, settings.span("format"), hint)


def _language(settings: Settings) -> Iterator[Diagnostic]:
    tag = known(settings.language)
    if tag and language(tag) is None:
        message = f"dates cannot be written in the language `{tag}`: pages have them in English"
        hint = f"languages with words for dates: {', '.join(known_languages())}"
        yield Diagnostic("language", Severity.WARNING, message, settings.span("language"), hint)


def _decode(path: Path, root: Path, case: str) -> tuple[str, tuple[Diagnostic, ...]]:
    """A file's text; where it is not UTF-8, what can be read of it and a diagnostic."""
    data = path.read_bytes()
    try:
        return data.decode("utf-8-sig"), ()
    except UnicodeDecodeError as fault:
        line = data[: fault.start].count(b"\n") + 1
        span = Span(_relative(path, root), line, 1, line, 2)
        message = "this file is not written in UTF-8"
        hint = "save it again with the encoding UTF-8"
        fallback = data.decode("utf-8", errors="replace")
        return fallback, (Diagnostic("encoding", Severity.ERROR, message, span, hint, case),)


def _relative(path: Path, root: Path) -> str:
    return path.relative_to(root).as_posix()


def _vocabulary(root: Path) -> tuple[Terms, Mapping[str, Recipe], tuple[Diagnostic, ...]]:
    terms: Terms = builtin()
    recipes: Mapping[str, Recipe] = {}
    faults: list[Diagnostic] = []
    for path in sorted((root / "vocabulary").glob("*.yml")):
        text, undecoded = _decode(path, root, "")
        file = _relative(path, root)
        more: tuple[Diagnostic, ...]
        if path.stem == "recipes":
            recipes, more = read_recipes(text, file)
        elif path.stem in KINDS:
            terms, more = extend(terms, path.stem, text, file)
        else:
            more = (_no_such_vocabulary(path.stem, file),)
        faults.extend((*undecoded, *more))
    return terms, recipes, tuple(faults)


def _no_such_vocabulary(stem: str, file: str) -> Diagnostic:
    names = [*KINDS, "recipes"]
    message = f"there is no vocabulary `{stem}`; its files are {', '.join(names)}"
    hint = did_you_mean(stem, names)
    return Diagnostic("no-vocabulary", Severity.ERROR, message, Span(file, 1, 1, 1, 2), hint)


def _case_folders(root: Path) -> list[Path]:
    """The folders that hold a case, by name; a folder that starts with a dot or _ is passed by."""
    cases = root / "cases"
    found = cases.iterdir() if cases.is_dir() else ()
    return sorted(path for path in found if path.is_dir() and path.name[0] not in "._")


def _folder(path: Path, root: Path, recipes: Mapping[str, Recipe], cache: Cache) -> _Folder:
    case, faults = _case(path, root)
    case = with_recipes(case, recipes)
    found = find_photos(case, path, cache)
    told = (*faults, *found.diagnostics)
    return _Folder(path, case, told, found.images, found.originals, found.inspected)


def _case(path: Path, root: Path) -> tuple[Case, tuple[Diagnostic, ...]]:
    file = path / "case.md"
    name = path.name
    document = read_document(file.read_bytes(), _relative(file, root))
    case, faults = _read_case(document.front, name)
    episodes, more = _episodes(path, root, name)
    if episodes:
        case = replace(case, episodes=(*items(case.episodes), *episodes))
    case, unfit = _with_id(replace(case, story=document.body), name)
    told = unfit if document.front else ()  # without any key it goes without saying that one lacks
    return case, (*_in(name, document.diagnostics), *faults, *more, *told)


def _in(case: str, faults: Iterable[Diagnostic]) -> tuple[Diagnostic, ...]:
    return tuple(replace(one, case=case) for one in faults)


def _read_case(front: MappingNode | None, name: str) -> tuple[Case, tuple[Diagnostic, ...]]:
    return read(Case, front, name) if front else (Case(), ())


def _episodes(
    path: Path, root: Path, name: str
) -> tuple[tuple[Episode, ...], tuple[Diagnostic, ...]]:
    found: list[Episode] = []
    faults: list[Diagnostic] = []
    for file in sorted((path / "episodes").glob("*.md")):
        document = read_document(file.read_bytes(), _relative(file, root))
        faults.extend(_in(name, document.diagnostics))
        if document.front:
            episode, more = read(Episode, document.front, name)
            found.append(replace(episode, story=document.body))
            faults.extend(more)
    return tuple(found), tuple(faults)


def _slug(name: str) -> str:
    """A folder's name as an id, as near as an id can come."""
    slug = re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-")[:40].strip("-") or "case"
    return f"{slug}-1" if RESERVED.fullmatch(slug) else slug


def _with_id(case: Case, name: str) -> tuple[Case, tuple[Diagnostic, ...]]:
    """The case with an id that serves, and what is wrong with the one it gives."""
    if not case.id:
        message = "the case has no `id`"
        hint = f"write one that will never change, such as `id: {_slug(name)}`"
        return replace(case, id=_slug(name)), (_id_fault(case, name, message, hint),)
    if not ID.fullmatch(case.id) or RESERVED.fullmatch(case.id):
        why = ": Windows keeps that name for itself" if RESERVED.fullmatch(case.id) else ""
        message = f"`{case.id[:60]}` cannot be an id{why}"
        hint = f"a-z, 0-9 and hyphens inside, at most 40, such as `{_slug(case.id)}`"
        return replace(case, id=_slug(name)), (_id_fault(case, name, message, hint),)
    return case, ()


def _id_fault(case: Case, name: str, message: str, hint: str) -> Diagnostic:
    return Diagnostic("case-id", Severity.ERROR, message, case.span("id"), hint, name)


def _unique(folders: list[_Folder]) -> tuple[list[Case], list[Diagnostic]]:
    """The cases without those whose id, or earlier id, is already another's."""
    cases: list[Case] = []
    faults: list[Diagnostic] = []
    taken: dict[str, str] = {}
    for one in folders:
        names = (one.case.id, *items(one.case.was))
        clash = next((name for name in names if name in taken), None)
        if clash is None:
            cases.append(one.case)
            taken.update(dict.fromkeys(names, one.path.name))
        else:
            message = f"the id `{clash}` is already that of `cases/{taken[clash]}`"
            hint = "an id is given once and for ever: choose another for the newer case"
            faults.append(_id_fault(one.case, one.path.name, message, hint))
    return cases, faults
