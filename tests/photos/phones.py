"""Files as phones write them, byte for byte: with films, depth, gain maps, and what else is said.

Each has `SECRET` planted in everything that is not the picture. Structures are from memory of
JPEG (ITU-T T.81), CIPA DC-007 (several pictures in a file), Adobe's XMP part 3, ISO/IEC 23008-12
(HEIC) and ISO 19566-5 (JUMBF).
"""

from __future__ import annotations

import struct
from collections.abc import Callable, Sequence
from io import BytesIO
from itertools import count
from typing import Any

from PIL import ExifTags, Image

SECRET = b"PLANTED-SECRET"
RED, GREEN, BLUE, WHITE = (220, 30, 30), (30, 180, 30), (30, 30, 220), (255, 255, 255)
CORNERS = (RED, GREEN, BLUE, WHITE)


def quarters(size: tuple[int, int] = (512, 384)) -> Image.Image:
    """Red, green; blue, white: no turn or mirroring gives the same."""
    image = Image.new("RGB", (2, 2))
    image.putdata(CORNERS)
    return image.resize(size, Image.Resampling.NEAREST)


def tags(orientation: int = 1) -> bytes:
    """Tags of a phone: orientation, moment with offset and parts of a second, a planted name."""
    made = Image.Exif()
    made[ExifTags.Base.Orientation] = orientation
    made[ExifTags.Base.Artist] = SECRET.decode()
    made[ExifTags.Base.Make], made[ExifTags.Base.Model] = "Invented", "Invented Phone 1"
    inside = made.get_ifd(ExifTags.IFD.Exif)
    inside[ExifTags.Base.DateTimeOriginal] = "2025:01:28 14:03:00"
    inside[ExifTags.Base.OffsetTimeOriginal] = "-05:00"
    inside[ExifTags.Base.SubsecTimeOriginal] = "417"
    return made.tobytes()


def jpeg(image: Image.Image | None = None, **how: Any) -> bytes:
    out = BytesIO()
    (image or quarters()).save(out, "JPEG", quality=90, **how)
    return out.getvalue()


def with_segments(data: bytes, *segments: tuple[int, bytes]) -> bytes:
    """A JPEG with further segments after its start."""
    made = (struct.pack(">BBH", 0xFF, kind, len(body) + 2) + body for kind, body in segments)
    return data[:2] + b"".join(made) + data[2:]


# --- JPEG ------------------------------------------------------------------------------------


def motion_photo() -> bytes:
    """A still with a film behind it, as its XMP tells."""
    film = box(b"ftyp", b"mp42" + bytes(4) + b"mp42") + box(b"mdat", SECRET * 50)
    told = b'<x:xmpmeta GCamera:MotionPhoto="1" owner="' + SECRET + b'"/>'
    return jpeg(xmp=told, exif=tags()) + film


def trailer() -> bytes:
    """A still with a maker's own data behind it, in the middle of which a JPEG begins."""
    return jpeg(exif=tags()) + b"SEFH" + SECRET + jpeg(comment=SECRET) + b"SEFT"


def two_pictures(second: bytes, kind: int, **how: Any) -> bytes:
    """A JPEG whose list of pictures (MPF, CIPA DC-007) names a second one behind it."""
    first = jpeg(None, exif=tags(), **how)
    entries = 16 * 2
    head = b"MPF\0II*\0" + struct.pack("<I", 8)
    values = [(0xB000, 7, 4, b"0100"), (0xB001, 4, 1, struct.pack("<I", 2))]
    at = 8 + 2 + 12 * 3 + 4
    values.append((0xB002, 7, entries, struct.pack("<I", at)))
    listed = struct.pack("<H", 3)
    listed += b"".join(struct.pack("<HHI", *one[:3]) + one[3] for one in values) + bytes(4)
    size = len(first) + 4 + len(head) + len(listed) + entries
    begins = 2 + 4 + 4  # of what offsets are counted from: after SOI, marker, length and "MPF"
    main = struct.pack("<IIIHH", 0x20030000, size, 0, 0, 0)
    more = struct.pack("<IIIHH", kind, len(second), size - begins, 0, 0)
    return with_segments(first, (0xE2, head + listed + main + more)) + second


def portrait() -> bytes:
    """A picture with its depth behind it, which is a picture of its own."""
    return two_pictures(jpeg(Image.new("L", (64, 48), 90), comment=SECRET), 0x00020003)


def gain_map() -> bytes:
    """A picture with a map of how much brighter a bright screen may show it."""
    told = b'<x:xmpmeta hdrgm:Version="1.0" owner="' + SECRET + b'"/>'
    return two_pictures(jpeg(Image.new("L", (64, 48), 90), comment=SECRET, xmp=told), 0, xmp=told)


def broken_list() -> bytes:
    """A picture whose list of further pictures leads nowhere."""
    whole = portrait()
    return whole[: whole.rindex(b"\xff\xd8")]


def said_everywhere() -> bytes:
    """A progressive JPEG with long XMP, Photoshop's block, a signed history and two comments."""
    long = b"http://ns.adobe.com/xmp/extension/\0" + b"0" * 32 + struct.pack(">II", 30, 0) + SECRET
    caption = b"\x1c\x02\x78" + struct.pack(">H", len(SECRET)) + SECRET
    block = b"Photoshop 3.0\0" + b"8BIM\x04\x04\0\0" + struct.pack(">I", len(caption)) + caption
    signed = b"JP\0\x01" + struct.pack(">I", 1) + box(b"jumb", box(b"jumd", b"c2pa" + SECRET))
    segments = [(0xE1, long), (0xED, block + b"\0"), (0xEB, signed), (0xFE, SECRET), (0xEC, SECRET)]
    return with_segments(jpeg(progressive=True, exif=tags(), comment=SECRET), *segments)


# --- HEIC ------------------------------------------------------------------------------------


def box(kind: bytes, body: bytes) -> bytes:
    return struct.pack(">I", len(body) + 8) + kind + body


def full(kind: bytes, body: bytes, version: int = 0) -> bytes:
    return box(kind, struct.pack(">B3x", version) + body)


def coded(image: Image.Image) -> tuple[bytes, bytes]:
    """A picture as HEVC: the box of its parameters, and its bytes; sides are multiples of 64."""
    from pillow_heif import register_heif_opener

    register_heif_opener(thumbnails=False)
    out = BytesIO()
    image.save(out, "HEIF", quality=90)
    data = out.getvalue()
    at = data.index(b"hvcC") - 4
    parameters = data[at : at + struct.unpack(">I", data[at : at + 4])[0]]
    places = data.index(b"iloc") + 4 + 4 + 2 + 2
    start, offset, length = struct.unpack(">4xI2xII", data[places : places + 18])
    return parameters, data[start + offset : start + offset + length]


class Heic:
    """A HEIC in the making: items with their properties, and how they hang together."""

    def __init__(self) -> None:
        self.items: list[tuple[bytes, bytes, list[int]]] = []
        self.properties: list[bytes] = []
        self.references: list[tuple[bytes, int, int]] = []

    def add(self, kind: bytes, data: bytes, properties: Sequence[bytes] = ()) -> int:
        """A further item; its number."""
        numbers = range(len(self.properties) + 1, len(self.properties) + len(properties) + 1)
        self.properties += properties
        self.items.append((kind, data, list(numbers)))
        return len(self.items)

    def picture(self, image: Image.Image, *more: bytes) -> int:
        parameters, data = coded(image)
        size = full(b"ispe", struct.pack(">II", *image.size))
        return self.add(b"hvc1", data, [parameters, size, *more])

    def about(self, kind: bytes, item: int, other: int) -> None:
        """That one item belongs to another: as its depth, its preview, its tags."""
        self.references.append((kind, item, other))

    def data(self, tail: bytes = b"") -> bytes:
        """The file, of which the first item is the picture shown."""
        head = box(b"ftyp", b"heic" + bytes(4) + b"mif1heic")
        start = len(head) + len(self._meta(0)) + 8
        return (
            head + self._meta(start) + box(b"mdat", b"".join(one[1] for one in self.items)) + tail
        )

    def _meta(self, start: int) -> bytes:
        listed, owned, places = b"", b"", b""
        for number, (kind, data, properties) in zip(count(1), self.items):
            listed += full(b"infe", struct.pack(">HH", number, 0) + kind + b"\0", 2)
            owned += struct.pack(
                f">HB{len(properties)}B",
                number,
                len(properties),
                *(0x80 | one for one in properties),
            )
            places += struct.pack(">HHHII", number, 0, 1, start, len(data))
            start += len(data)
        many = struct.pack(">H", len(self.items))
        references = b"".join(
            box(kind, struct.pack(">HHH", one, 1, other)) for kind, one, other in self.references
        )
        owners = full(b"ipma", struct.pack(">I", len(self.items)) + owned)
        parts = [
            full(b"hdlr", bytes(4) + b"pict" + bytes(13)),
            full(b"pitm", struct.pack(">H", 1)),
            full(b"iloc", b"\x44\0" + many + places),
            full(b"iinf", many + listed),
            *([full(b"iref", references)] if references else []),
            box(b"iprp", box(b"ipco", b"".join(self.properties)) + owners),
        ]
        return full(b"meta", b"".join(parts))


def heic_tags(orientation: int) -> bytes:
    return struct.pack(">I", 6) + tags(orientation)


def heic_turned(turn: bytes, image: Image.Image, orientation: int) -> bytes:
    """A picture with a turn among its properties, and the same turn in its tags."""
    made = Heic()
    main = made.picture(image, turn)
    made.about(b"cdsc", made.add(b"Exif", heic_tags(orientation)), main)
    return made.data()


def heic_with_all() -> bytes:
    """A picture with depth, a matte, a preview, tags and XMP, and a film behind it."""
    made = Heic()
    main = made.picture(quarters())
    small = Image.new("RGB", (64, 64), (10, 10, 10))
    for name in (b"urn:mpeg:hevc:2015:auxid:2", b"urn:invented:matte:" + SECRET):
        made.about(b"auxl", made.picture(small, full(b"auxC", name + b"\0")), main)
    made.about(b"thmb", made.picture(quarters((128, 64))), main)
    made.about(b"cdsc", made.add(b"Exif", heic_tags(1)), main)
    made.about(b"cdsc", made.add(b"mime", b"<x:xmpmeta>" + SECRET + b"</x:xmpmeta>"), main)
    return made.data(box(b"mpvd", SECRET))


def heic_burst() -> bytes:
    """Two pictures on one footing."""
    made = Heic()
    made.picture(quarters())
    made.picture(Image.new("RGB", (128, 64), (10, 10, 10)))
    return made.data()


# --- others ----------------------------------------------------------------------------------


def moving_webp() -> bytes:
    out = BytesIO()
    other = Image.new("RGB", (512, 384), (10, 10, 10))
    quarters().save(out, "WEBP", save_all=True, append_images=[other], exif=tags(), xmp=SECRET)
    return out.getvalue()


def tiff_of_pages() -> bytes:
    out = BytesIO()
    other = Image.new("RGB", (64, 64), (10, 10, 10))
    other.info["comment"] = SECRET.decode()
    quarters().save(out, "TIFF", save_all=True, append_images=[other], description=SECRET.decode())
    return out.getvalue()


FILES: dict[str, tuple[Callable[[], bytes], set[str]]] = {
    "motion.jpg": (motion_photo, set()),
    "trailer.jpg": (trailer, set()),
    "portrait.jpg": (portrait, set()),
    "gain-map.jpg": (gain_map, set()),
    "broken-list.jpg": (broken_list, set()),
    "said-everywhere.jpg": (said_everywhere, set()),
    "all.heic": (heic_with_all, set()),
    "burst.heic": (heic_burst, {"photo-pages"}),
    "moving.webp": (moving_webp, {"photo-pages"}),
    "pages.tif": (tiff_of_pages, {"photo-pages"}),
}
"""What phones and scanners write, and what is told of it."""
