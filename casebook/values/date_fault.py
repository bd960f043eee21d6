"""What to say of a text that is no date: what was probably meant, and how to write it."""

from __future__ import annotations

import re

from casebook.values import edtf
from casebook.values.fault import NotUnderstood

_NOT_WRITTEN = re.compile(
    r"(?:undated|n\.?\s*d\.?|s\.?\s*d\.?|no date|not dated|unknown|not recorded|not read|none|\?+)",
    re.IGNORECASE | re.ASCII,
)
_RELATIVE = re.compile(
    r"(?:much |probably |perhaps )?(?:later|earlier|modern|recent|old|contemporary|original|today|"
    r"yesterday|tomorrow|now)",
    re.IGNORECASE | re.ASCII,
)
_DIGITS = re.compile(
    r"(?P<a>[0-9]{1,2})(?P<sep>[/.-])(?P<b>[0-9]{1,2})(?P=sep)(?P<year>[0-9]{4}|[0-9]{2})"
)
_PLAIN = re.compile(r"[0-9]{1,4}s?|[0-9]{3,4}\s*-\s*[0-9]{3,4}", re.ASCII)
_EDTF_ONLY = re.compile(r"[-0-9XxYEuSTZ:/.\[\]{},?~%+\s]+", re.ASCII)


def refuse_at_sight(text: str) -> None:
    """Raises NotUnderstood for what must never be guessed at."""
    if _NOT_WRITTEN.fullmatch(text):
        _refuse(text, f'"{text}" is not a date', "say `not recorded` or `unknown`")
    if _RELATIVE.fullmatch(text):
        _refuse(
            text,
            f'"{text}" is not a date by itself',
            'write a day, a year, or a bound such as "after 1850"',
        )
    if found := _DIGITS.fullmatch(text):
        _refuse(text, f'"{text}": day and month could be swapped', _days_hint(found))


def _refuse(text: str, message: str, hint: str) -> None:
    """Raises the fault, for the whole text."""
    raise NotUnderstood(message, hint=hint, start=0, end=len(text))


def _days_hint(found: re.Match[str]) -> str:
    """The days that `03/04/2025` may mean, written without a doubt."""
    year = found["year"]
    if len(year) == 2:
        return "write year, month and day: 2025-03-14"
    days = [
        f"{year}-{int(m):02d}-{int(d):02d}"
        for d, m in ((found["a"], found["b"]), (found["b"], found["a"]))
    ]
    real = [day for day in dict.fromkeys(days) if _is_edtf(day)]
    return f"write {' or '.join(real)}" if real else "write year, month and day: 2025-03-14"


def tell(text: str, as_edtf: NotUnderstood, in_words: NotUnderstood) -> NotUnderstood:
    """The fault of a text that is neither EDTF nor words, the one that helps most."""
    for candidate in _near(text):
        if candidate != text and _is_edtf(candidate):
            return NotUnderstood(
                f'"{text}" is not EDTF as it stands',
                hint=f"write {candidate}",
                start=0,
                end=len(text),
            )
    return in_words if _PLAIN.fullmatch(text) or not _EDTF_ONLY.fullmatch(text) else as_edtf


def _near(text: str) -> list[str]:
    """EDTF texts that differ from this one by a usual slip."""
    tight = re.sub(r"\s", "", text)
    return [
        tight,
        re.sub("[xu]", "X", tight),
        re.sub("[–—−]", "-", tight),
        tight.removesuffix("unknown"),
        tight.replace("open", ".."),
        tight.replace("?~", "%").replace("~?", "%"),
        tight.removeprefix("Y"),
        re.sub(r"^([0-9]{4})([0-9]{2})([0-9]{2})$", r"\1-\2-\3", tight),
        re.sub(r"^([0-9]{2})([0-9]{2})/([0-9]{2})$", r"\1\2/\1\3", tight),
    ]


def _is_edtf(text: str) -> bool:
    """Whether a text is EDTF."""
    try:
        edtf.parse(text)
    except NotUnderstood:
        return False
    return True
