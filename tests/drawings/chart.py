"""The chart of Quernmouth Roads: an engraved sheet, folded to twelve panels, front and back."""

from __future__ import annotations

import math
import random

from PIL import Image, ImageChops, ImageDraw, ImageFilter, ImageFont, ImageOps

from tests.drawings import surfaces as s
from tests.drawings.scene import Scene

CASE = "2025-044"
SCALE = 1.3
SIZE = (round(1046 * SCALE), round(742 * SCALE))
YELLOW, WASHED, LINING = (206, 184, 138), (224, 212, 182), (236, 230, 214)
AT = (120, 40)


def recto(*, mended: bool) -> Scene:
    """The engraved side, before or after."""
    scene = Scene((1600, 1180), SCALE, 500 + mended)
    sheet = s.paper(SIZE, 501, WASHED if mended else YELLOW, 20)
    sheet = _laid(sheet)
    sheet = _printed(sheet, _engraving(), 0.86)
    sheet = _red_line(sheet)
    sheet = _stains(sheet, 0.28 if mended else 1.0)
    return _finish(scene, sheet, mended, back=False)


def verso(state: str) -> Scene:
    """The back: before (strips), mended (before lining) or after (lined)."""
    scene = Scene((1600, 1180), SCALE, 510 + len(state))
    before = state == "before"
    sheet = s.paper(SIZE, 511, YELLOW if before else WASHED, 20)
    sheet = _laid(sheet)
    sheet = _printed(sheet, ImageOps.mirror(_engraving()).filter(ImageFilter.GaussianBlur(2)), 0.13)
    sheet = ImageOps.mirror(_stains(ImageOps.mirror(sheet), 0.8 if before else 0.24))
    sheet = _name(sheet)
    sheet = _strips(sheet) if before else _mends(sheet)
    if state == "after":
        sheet = _veiled(sheet)
    return _finish(scene, sheet, not before, back=True, lined=state == "after")


def _finish(
    scene: Scene, sheet: Image.Image, mended: bool, *, back: bool, lined: bool = True
) -> Scene:
    """Folds, splits and holes, the lining's edge, shadow and card."""
    sheet = s.shaded(sheet, _panels(0.3 if mended else 1.0))
    mask = s.box(SIZE, (1, 1, SIZE[0] - 1, SIZE[1] - 1), 0.8)
    gone = _lost()
    if back:
        gone = ImageOps.mirror(gone)
    for area in _strip_areas() if back and not mended else ():
        gone = ImageChops.subtract(gone, s.box(SIZE, area))
    if mended:
        fill = s.paper(SIZE, 521, (232, 222, 196), 10)
        soft = gone.filter(ImageFilter.GaussianBlur(0.7))
        sheet = s.mix(sheet, s.shaded(fill, _panels(0.2)), soft)
        if lined:
            _margin(scene)
        scene.lay(sheet, mask, AT, height=2 if lined else 4, dark=0.2 if lined else 0.5)
    else:
        edge = ImageChops.subtract(gone.filter(ImageFilter.GaussianBlur(4)), gone)
        sheet = s.stained(sheet, edge, (120, 92, 60), 0.6)
        whole = s.eroded(mask, 522, 16, 2.4)
        scene.lay(sheet, ImageChops.subtract(whole, gone), AT, height=6)
    scene.target((1424 - 130, 1050), CASE, "verso" if back else "recto")
    return scene


def _margin(scene: Scene) -> None:
    """Four millimetres of the lining all round."""
    reach = round(4 * SCALE)
    size = (SIZE[0] + 2 * reach, SIZE[1] + 2 * reach)
    scene.lay(
        s.paper(size, 523, LINING, 8),
        s.box(size, (1, 1, size[0] - 1, size[1] - 1)),
        (AT[0] - reach, AT[1] - reach),
        height=4,
    )


def _laid(sheet: Image.Image) -> Image.Image:
    """Chain lines, faint."""
    lines = [[(x, 0), (x, SIZE[1])] for x in range(14, SIZE[0], 33)]
    return s.stained(sheet, s.strokes(SIZE, lines, 1.4, 1.2), (200, 186, 150), 0.16)


def _printed(sheet: Image.Image, ink: Image.Image, strength: float) -> Image.Image:
    return s.stained(sheet, ink, (58, 50, 44), strength)


def _coast(seed: int = 530) -> list[tuple[float, float]]:
    """The shore, from the upper left corner to the lower edge, with a harbour in it."""
    dice = random.Random(seed)
    found = []
    for k in range(121):
        part = k / 120
        x = 120 + 440 * part + 90 * math.sin(part * 7) + 34 * math.sin(part * 23)
        y = 96 + (SIZE[1] - 190) * part
        if 0.44 < part < 0.53:
            x -= 120 * math.sin((part - 0.44) / 0.09 * math.pi)
        found.append((x + dice.uniform(-5, 5), y + dice.uniform(-3, 3)))
    return found


def _engraving() -> Image.Image:
    """The copper plate as a mask: frame, shore, hills, banks, soundings, compass, title."""
    lines: list[s.Points] = []
    coast = _coast()
    lines.append(coast)
    for k in range(1, 5):
        lines.append([(x + k * (4 + k), y) for x, y in coast])
    fine = s.strokes(SIZE, lines, 1.1, 0.4)
    ink = ImageChops.lighter(fine, s.strokes(SIZE, [coast], 2.2, 0.4))
    ink = ImageChops.lighter(
        ink, s.strokes(SIZE, _hills(coast), 1.0, 0.4).point([round(v * 0.8) for v in range(256)])
    )
    ink = ImageChops.lighter(ink, _figures(coast))
    ink = ImageChops.lighter(ink, _compass((1020, 330), 118))
    ink = ImageChops.lighter(ink, _frame())
    return ImageChops.lighter(ink, _title())


def _hills(coast: list[tuple[float, float]]) -> list[s.Points]:
    """Short strokes behind the shore."""
    dice = random.Random(541)
    found: list[s.Points] = []
    for x, y in coast:
        for _ in range(7):
            back = dice.uniform(24, 250)
            if x - back > 56:
                high = dice.uniform(6, 15)
                left, top = x - back, y + dice.uniform(-8, 8)
                found.append([(left, top), (left + 3, top + high * 0.5), (left + 9, top + high)])
    return found


def _figures(coast: list[tuple[float, float]]) -> Image.Image:
    """Soundings, and stippled banks."""
    layer = Image.new("L", SIZE)
    draw = ImageDraw.Draw(layer)
    dice, font = random.Random(551), ImageFont.load_default(14)
    spots = [(x, y) for x in range(320, SIZE[0] - 90, 40) for y in range(72, SIZE[1] - 80, 36)]
    for left, top in spots:
        x, y = left + dice.uniform(-11, 11), top + dice.uniform(-10, 10)
        shore = min(coast, key=lambda point: abs(point[1] - y))[0]
        title = 800 < x < 1270 and y > 640
        rose = math.hypot(x - 1020, y - 330) < 140
        if x > shore + 60 and not title and not rose and dice.random() < 0.7:
            depth = round(1 + (x - shore) / 70 + dice.uniform(-1, 2))
            draw.text((x, y), str(max(1, depth)), font=font, fill=210)
    for bank in ((760, 250, 120, 26), (690, 480, 90, 22), (720, 760, 60, 40), (930, 560, 130, 20)):
        for _ in range(bank[2] * 6):
            turn, far = dice.uniform(0, math.tau), dice.random() ** 0.5
            x, y = (
                bank[0] + bank[2] * far * math.cos(turn),
                bank[1] + bank[3] * far * math.sin(turn),
            )
            draw.point((x + y * 0.2 - 60, y), fill=230)
            draw.point((x + y * 0.2 - 59, y), fill=120)
    return layer.filter(ImageFilter.GaussianBlur(0.4))


def _compass(centre: tuple[int, int], radius: int) -> Image.Image:
    """A rose of thirty-two points with its lines running over the sea."""
    x, y = centre
    layer = Image.new("L", (SIZE[0] * 2, SIZE[1] * 2))
    draw = ImageDraw.Draw(layer)
    for k in range(32):
        turn = k * math.tau / 32
        far = (760 if k % 4 == 0 else radius) * 2
        end = (x * 2 + far * math.cos(turn), y * 2 + far * math.sin(turn))
        draw.line((x * 2, y * 2, *end), fill=120 if k % 4 == 0 else 200, width=1)
    for ring in (1, 0.94, 0.6, 0.56):
        r = radius * ring * 2
        draw.ellipse((x * 2 - r, y * 2 - r, x * 2 + r, y * 2 + r), outline=220, width=2)
    for k in range(8):
        turn, long = k * math.tau / 8, radius * (1.7 if k % 2 == 0 else 1.15)
        tip = (x * 2 + long * math.cos(turn), y * 2 + long * math.sin(turn))
        side = turn + math.tau / 16
        waist = (x * 2 + radius * 0.4 * math.cos(side), y * 2 + radius * 0.4 * math.sin(side))
        draw.polygon([(x * 2, y * 2), waist, tip], fill=235)
        side = turn - math.tau / 16
        waist = (x * 2 + radius * 0.4 * math.cos(side), y * 2 + radius * 0.4 * math.sin(side))
        draw.polygon([(x * 2, y * 2), waist, tip], outline=235)
    layer = layer.resize(SIZE, s.FINE)
    land = s.polygon(SIZE, [(0, 0), *_coast(), (0, SIZE[1])])
    return ImageChops.subtract(layer, land)


def _frame() -> Image.Image:
    """Double frame with a graduated border."""
    layer = Image.new("L", SIZE)
    draw = ImageDraw.Draw(layer)
    wide, high = SIZE
    for inset, width in ((34, 2), (42, 1), (48, 3)):
        draw.rectangle((inset, inset, wide - inset, high - inset), outline=235, width=width)
    for k, x in enumerate(range(48, wide - 60, 20)):
        if k % 2:
            draw.rectangle((x, 42, x + 20, 46), fill=235)
            draw.rectangle((x, high - 47, x + 20, high - 42), fill=235)
    draw.text(
        (wide / 2 - 180, high - 28),
        "Publish'd as the Act directs, 1st May 1798, for the Author",
        font=ImageFont.load_default(13),
        fill=200,
    )
    return layer.filter(ImageFilter.GaussianBlur(0.4))


def _title() -> Image.Image:
    """The title in an oval at the lower right."""
    layer = Image.new("L", SIZE)
    draw = ImageDraw.Draw(layer)
    for k, fill in ((0, 220), (5, 140)):
        draw.ellipse((820 + k, 660 + k, 1250 - k, 890 - k), outline=fill, width=2)
    for y, size, text in (
        (690, 17, "A CHART of"),
        (718, 38, "QUERNMOUTH"),
        (766, 38, "ROADS"),
        (816, 15, "from a Survey by Lieut. R. Overy"),
        (840, 13, "engraved by J. Tamsin"),
    ):
        font = ImageFont.load_default(size)
        draw.text((1035 - draw.textlength(text, font=font) / 2, y), text, font=font, fill=225)
    return layer.filter(ImageFilter.GaussianBlur(0.4))


def _red_line(sheet: Image.Image) -> Image.Image:
    """The fairway, drawn by hand in red ink."""
    points = [(1290, 560), (1150, 590), (980, 610), (840, 590), (700, 560), (600, 545), (500, 552)]
    return s.stained(sheet, s.strokes(SIZE, [points], 2.4, 0.7), (196, 70, 56), 0.8)


def _stains(sheet: Image.Image, strength: float) -> Image.Image:
    """Tideline, foxing, rust at a pin hole."""
    wet = s.polygon(
        SIZE,
        [
            (SIZE[0] + 40, SIZE[1] - 250),
            (SIZE[0] - 150, SIZE[1] - 262),
            (SIZE[0] - 352, SIZE[1] - 110),
            (SIZE[0] - 300, SIZE[1] + 40),
            (SIZE[0] + 40, SIZE[1] + 40),
        ],
        1,
    )
    wet = s.eroded(wet, 561, 170, 9)
    inner = wet.filter(ImageFilter.GaussianBlur(9))
    rim = ImageChops.subtract(wet, inner.point([min(255, round(v * 1.02)) for v in range(256)]))
    sheet = s.stained(sheet, wet, (214, 190, 146), 0.65 * strength)
    sheet = s.stained(sheet, rim.filter(ImageFilter.GaussianBlur(1.5)), (150, 106, 60), strength)
    upper = s.slope(SIZE, [(0, 255), (0.45, 200), (0.6, 0), (1, 0)], down=True)
    fox = ImageChops.multiply(s.spots(SIZE, 563, 15, 0.010, 1.6), upper)
    sheet = s.stained(sheet, fox, (186, 136, 84), 0.75 * max(strength, 0.6))
    rust = s.strokes(SIZE, [[(704, 20), (705, 20)]], 9, 3)
    sheet = s.stained(sheet, rust, (150, 82, 40), 0.9)
    return s.stained(sheet, s.strokes(SIZE, [[(704, 20), (705, 20)]], 3, 0.5), (40, 30, 24), 1)


def _verticals() -> list[float]:
    return [SIZE[0] * k / 6 for k in range(1, 6)]


def _panels(strength: float) -> Image.Image:
    """The shade of twelve panels and six folds, alternately up and down."""
    shade = Image.new("L", SIZE, 128)
    edges = [0.0, *_verticals(), float(SIZE[0])]
    for k in range(6):
        left, right = round(edges[k]), round(edges[k + 1])
        stops = [(0, 150), (0.5, 130), (1, 112)] if k % 2 else [(0, 108), (0.5, 128), (1, 148)]
        for row in range(2):
            tone = s.slope((right - left, SIZE[1] // 2), stops)
            shade.paste(s.levels(tone, 0.8 if row else 1.0), (left, row * (SIZE[1] // 2)))
    lines: list[s.Points] = [[(x, 0), (x, SIZE[1])] for x in _verticals()]
    lines.append([(0, SIZE[1] / 2), (SIZE[0], SIZE[1] / 2)])
    shade.paste(66, mask=s.strokes(SIZE, lines, 1.2, 0.9))
    shade.paste(176, mask=ImageChops.offset(s.strokes(SIZE, lines, 1.2, 0.9), 2, 2))
    return s.levels(shade, strength)


def _lost() -> Image.Image:
    """Splits along the folds and holes at the crossings, as a mask seen from the front."""
    dice = random.Random(571)
    middle = SIZE[1] / 2
    lines: list[s.Points] = []
    for k, x in enumerate(_verticals()):
        reach = dice.uniform(60, 190)
        lines.append(
            s.jagged((x, middle - reach), (x, middle + dice.uniform(50, 170)), 572 + k, 1.2)
        )
        if k % 2:
            lines.append(
                s.jagged((x, SIZE[1] - 2), (x, SIZE[1] - dice.uniform(80, 140)), 580 + k, 1)
            )
        lines.append(
            s.jagged(
                (x - dice.uniform(30, 90), middle), (x + dice.uniform(30, 90), middle), 590 + k, 1.2
            )
        )
    splits = s.strokes(SIZE, lines, 2.2, 0.5)
    holes = Image.new("L", SIZE)
    for k, x in enumerate(_verticals()):
        r = (8, 7, 10, 8, 7)[k]
        points = [
            (x + r * dice.uniform(0.7, 1.3) * math.cos(t), middle + r * 0.75 * math.sin(t))
            for t in (index * math.tau / 9 for index in range(9))
        ]
        holes = ImageChops.lighter(holes, s.polygon(SIZE, points))
    return ImageChops.lighter(splits, holes)


def _strip_areas() -> list[tuple[float, float, float, float]]:
    """Where the four brown strips lie, seen from the back."""
    wide, middle, xs = 30 * SCALE, SIZE[1] / 2, _verticals()
    return [
        (60, middle - wide / 2, 640, middle + wide / 2),
        (700, middle - wide / 2, SIZE[0] - 90, middle + wide / 2),
        (xs[1] - wide / 2, 30, xs[1] + wide / 2, middle - 60),
        (xs[3] - wide / 2, middle + 50, xs[3] + wide / 2, SIZE[1] - 24),
    ]


def _strips(sheet: Image.Image) -> Image.Image:
    """Four strips of brown paper along folds, with breaks beside them."""
    for k, area in enumerate(_strip_areas()):
        mask = s.eroded(s.box(SIZE, area), 601 + k, 30, 2)
        brown = s.shaded(
            s.paper(SIZE, 611 + k, (148, 108, 66), 26), s.brushed(SIZE, 621, 3, 90, 0.3)
        )
        glue = mask.filter(ImageFilter.GaussianBlur(9))
        sheet = s.stained(sheet, glue, (196, 158, 104), 0.6)
        shadow = ImageChops.subtract(
            ImageChops.offset(mask, 2, 3).filter(ImageFilter.GaussianBlur(2)), mask
        )
        sheet = s.mix(s.stained(sheet, shadow, (80, 60, 40), 0.8), brown, mask)
        edge = area[3] + 2
        crack = s.jagged((area[0] + 40, edge), (area[0] + 130, edge + 3), 631 + k, 2)
        sheet = s.stained(sheet, s.strokes(SIZE, [crack], 1.8), (60, 46, 34), 0.9)
    return sheet


def _mends(sheet: Image.Image) -> Image.Image:
    """Narrow strips of Japanese paper over the splits, squares over the crossings."""
    half, middle = 4.5 * SCALE, SIZE[1] / 2
    mask = Image.new("L", SIZE)
    for k, x in enumerate(_verticals()):
        areas = [
            (x - half, middle - 230, x + half, middle + 220),
            (x - 17, middle - 17, x + 17, middle + 17),
            (x - 118, middle - half, x + 118, middle + half),
        ]
        if k % 2:
            areas.append((x - half, SIZE[1] - 170, x + half, SIZE[1] - 2))
        for area in areas:
            mask = ImageChops.lighter(mask, s.box(SIZE, area, 1))
    mask = s.eroded(mask, 641, 2.6, 1.1)
    tissue = s.shaded(Image.new("RGB", SIZE, (244, 240, 228)), s.brushed(SIZE, 642, 14, 3, 0.22))
    edge = ImageChops.subtract(
        ImageChops.offset(mask, 1, 2).filter(ImageFilter.GaussianBlur(1.4)), mask
    )
    sheet = s.stained(sheet, edge, (150, 130, 100), 0.7)
    return s.mix(sheet, tissue, mask.point([round(v * 0.78) for v in range(256)]))


def _veiled(sheet: Image.Image) -> Image.Image:
    """The lining over all, with its long fibres and the seam of its two sheets."""
    dice = random.Random(651)
    hairs: list[s.Points] = []
    for _ in range(900):
        x, y = dice.uniform(0, SIZE[0]), dice.uniform(0, SIZE[1])
        hairs.append(
            [(x, y), (x + dice.uniform(-9, 9), y + 16), (x + dice.uniform(-20, 20), y + 34)]
        )
    veil = s.paper(SIZE, 652, LINING, 8)
    veil = s.mix(veil, Image.new("RGB", SIZE, (252, 250, 242)), s.strokes(SIZE, hairs, 0.8, 0.5))
    seam = s.box(SIZE, (SIZE[0] * 0.54, 0, SIZE[0] * 0.54 + 13, SIZE[1]), 2)
    cover = Image.new("L", SIZE, 172)
    cover.paste(206, mask=seam)
    return s.mix(sheet, veil, cover)


def _name(sheet: Image.Image) -> Image.Image:
    """The owner's name, in brown ink."""
    note = Image.new("L", (360, 70))
    ImageDraw.Draw(note).text(
        (30, 8), "Mr Goss his chart", font=ImageFont.load_default(34), fill=230
    )
    note = note.transform(note.size, Image.Transform.AFFINE, (1, 0.34, -12, 0.04, 1, -6), s.SMOOTH)
    mask = Image.new("L", SIZE)
    mask.paste(note.filter(ImageFilter.GaussianBlur(0.7)), (280, 640))
    return s.stained(sheet, mask, (104, 70, 42), 0.85)
