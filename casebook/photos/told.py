"""What is told of photo files, each declared as a rule is: what is asked, why, by whose word."""

from __future__ import annotations

from dataclasses import dataclass

from casebook.diagnostics import Diagnostic, Severity, Span

_NO_SOURCE = "common practice, no source"


@dataclass(frozen=True, slots=True)
class Telling:
    """Something that a photo file may be told for, as heavily in every case.

    `example` is a message that it gives.
    """

    name: str
    severity: Severity
    what: str
    why: str
    example: str
    source: str = _NO_SOURCE

    def of(self, message: str, span: Span | None, hint: str, case: str) -> Diagnostic:
        """Tell it: `message` and `hint` of the file named at `span`, of the case in a folder."""
        return Diagnostic(self.name, self.severity, message, span, hint, case)


MISSING = Telling(
    "photo-missing",
    Severity.ERROR,
    "The file that a photo names is in the case's folder or its `photos/`, under just that name.",
    "Some disks take `Spine.JPG` for `spine.jpg`, others and the web do not.",
    "the photo `spine.jpg` is called `Spine.JPG` on the disk: only the capitals differ",
)
TOO_LARGE = Telling(
    "photo-too-large",
    Severity.ERROR,
    "A photo file has at most 60 MB and 120 million pixels.",
    "A few bytes may ask for more pixels than a computer can hold; such a file is not decoded.",
    "map.png has more than 120 million pixels",
)
DAMAGED = Telling(
    "photo-damaged",
    Severity.ERROR,
    "A photo file can be decoded to its last byte.",
    "A file cut short in copying looks whole in a list of files, and half grey on a page.",
    "spine.jpg is empty",
)
FORMAT = Telling(
    "photo-format",
    Severity.ERROR,
    "A photo is a JPEG, PNG, TIFF or WebP by its content; HEIC is read with the extra `heic`.",
    "Each further decoder is one more way in for a hostile file, and one more to keep.",
    "spine.jpg is a GIF picture, which is not read here",
)
MISLABELLED = Telling(
    "photo-mislabelled",
    Severity.WARNING,
    "A photo's name ends as its content asks.",
    "Programs that go by the name refuse such a file, or hand it on under a false name.",
    "spine.png is a JPEG file by its content",
)
PAGES = Telling(
    "photo-pages",
    Severity.WARNING,
    "A photo file holds one picture.",
    "Of several only the first is shown, and nobody sees that there are more.",
    "pages.tif holds several pictures: only the first is shown",
)
ORIENTATION = Telling(
    "photo-orientation",
    Severity.WARNING,
    "The tag that says which way up a photo is has one of its eight values.",
    "With another value every program decides for itself.",
    "spine.jpg says which way up it is with a value that no standard knows: shown as stored",
    "JEITA CP-3451, p. 18",
)
TAGS = Telling(
    "photo-tags",
    Severity.WARNING,
    "A photo's tags can be read.",
    "Date and camera stand in them, and the turn that shows the photo upright.",
    "spine.jpg has damaged tags: its date and camera may be missing",
)
PROFILE = Telling(
    "photo-profile",
    Severity.WARNING,
    "A photo's colour profile is whole, and made for its kind of pixels.",
    "Without it nobody knows which colours its numbers mean.",
    "spine.jpg has a colour profile that is damaged or does not fit: it is left out",
)
INKS = Telling(
    "photo-inks",
    Severity.SUGGESTION,
    "A photo in printing inks (CMYK) has a colour profile.",
    "The same inks are other colours on every paper; without a profile they are a guess.",
    "plate.tif is in printing inks without a colour profile: its colours are a guess",
)
DATE_IN_TAGS = Telling(
    "photo-date-in-tags",
    Severity.SUGGESTION,
    "A date that a photo's tags know stands in the record, too.",
    "Published pictures have no tags, and a file that is saved again may lose them.",
    "spine.jpg was taken on 2025-01-28 by its tags (Invented 1), and has no date",
)
DATE_DIFFERS = Telling(
    "photo-date-differs",
    Severity.SUGGESTION,
    "The date of a photo in the record and the one in its tags agree, to a day.",
    "One of the two is wrong: the record, or the camera's clock.",
    "spine.jpg was taken on 2025-01-28 by its tags (Invented 1), not on 2024",
)
TWICE = Telling(
    "photo-twice",
    Severity.SUGGESTION,
    "A photo file stands in a case once.",
    "Under two names it is taken for two photographs.",
    "copy.jpg is the same picture as spine.jpg",
)
NEAR_TWIN = Telling(
    "photo-near-twin",
    Severity.SUGGESTION,
    "Two photos of one stage, view and light do not look alike.",
    "A reader looks for the difference between them, and there may be none.",
    "spine-2.jpg looks much like spine.jpg",
)
TWO_CASES = Telling(
    "photo-in-two-cases",
    Severity.SUGGESTION,
    "A photo, or the same picture saved again, stands in one case.",
    "It may have been put into the wrong folder, and then shows another object.",
    "spine.jpg is the same picture as front.jpg of cases/2025-009",
)
NO_LOGO = Telling(
    "no-logo",
    Severity.ERROR,
    "The lab's logo lies beside `lab.yml`.",
    "It is taken from nowhere else, so that an archive can be moved whole.",
    "the logo `mark.png` is not beside `lab.yml`",
)

TELLINGS = (
    *(MISSING, TOO_LARGE, DAMAGED, FORMAT, MISLABELLED, PAGES, ORIENTATION, TAGS, PROFILE, INKS),
    *(DATE_IN_TAGS, DATE_DIFFERS, TWICE, NEAR_TWIN, TWO_CASES, NO_LOGO),
)
"""Everything that is told of photo files."""
