"""A page's body as plain lines: what a reader reads, without contents lists and explanations."""

from __future__ import annotations

from html.parser import HTMLParser

HEADINGS = {"h1": "#", "h2": "##", "h3": "###", "h4": "####"}
BLOCKS = {"p", "li", "dt", "dd", "tr", "caption", "figcaption", "div", "section", "ul", "ol", "dl"}
VOID = {"img", "br", "hr", "input", "source", "path", "line", "rect", "circle", "use", "polygon"}
UNREAD = frozenset({"contents", "unseen", "gloss-words", "drawn"})


class _Plain(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.lines: list[str] = []
        self._open: list[tuple[str, bool]] = []
        self._text = ""
        self._mark = ""
        self._label = ""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag in VOID:
            return
        names = (dict(attrs).get("class") or "").split()
        hidden = tag == "svg" or not UNREAD.isdisjoint(names)
        self._open.append((tag, hidden))
        if self._hidden:
            return
        if tag in HEADINGS or tag in BLOCKS:
            self._end_line()
            self._mark = f"{HEADINGS[tag]} " if tag in HEADINGS else self._list_mark(tag)
        elif tag in ("td", "th") and self._text:
            self._text += " | "

    def _list_mark(self, tag: str) -> str:
        depth = sum(1 for one, _ in self._open if one in ("ol", "ul")) - 1
        return "  " * max(depth, 0) + "- " if tag == "li" else self._mark

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """A tag that closes itself holds no text."""

    def handle_endtag(self, tag: str) -> None:
        if tag == "dt":
            self._label, self._text = f"{' '.join(self._text.split())}: ", ""
        elif tag in HEADINGS or tag in BLOCKS:
            self._end_line()
        while self._open and self._open.pop()[0] != tag:
            pass

    def handle_data(self, data: str) -> None:
        if not self._hidden:
            self._text += data

    @property
    def _hidden(self) -> bool:
        return any(hidden for _, hidden in self._open)

    def _end_line(self) -> None:
        words = " ".join(self._text.split())
        if words:
            told = self._label if self._within("dd") else ""
            self.lines.append(self._mark + told + words)
            self._mark = ""
        self._text = ""

    def _within(self, tag: str) -> bool:
        return any(one == tag for one, _ in self._open)


_KEYS = str.maketrans({"‘": "'", "’": "'", "“": '"', "”": '"', "…": "...", "′": "'", "″": '"'})


def typed(text: str) -> str:
    """A page's text with the marks of a keyboard, to be held against a record."""
    return text.translate(_KEYS)


def plain_lines(html: str) -> list[str]:
    """The lines of a page: headings with `#`, items with `-`, cells of a table with `|`."""
    parser = _Plain()
    parser.feed(html)
    parser.close()
    return parser.lines


def sections(html: str, wanted: frozenset[str]) -> list[str]:
    """What stands above the first section, and the sections of some headings."""
    kept, keep = [], True
    for line in plain_lines(html):
        if line.startswith("## "):
            keep = line.removeprefix("## ") in wanted
        if keep:
            kept.append(line)
    return kept


def beyond(lines: list[str], base: list[str]) -> list[str]:
    """The lines that another page has not, each under the headings it stands under."""
    known = set(base)
    found: list[str] = []
    above: dict[int, str] = {}
    for line in lines:
        level = len(line) - len(line.lstrip("#"))
        if level:
            above = {one: text for one, text in above.items() if one < level} | {level: line}
        elif line not in known:
            found.extend(above[one] for one in sorted(above) if above[one] not in found)
            above = {}
            found.append(line)
    return found
