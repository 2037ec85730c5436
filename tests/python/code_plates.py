"""Drawn plates with codes by writers that are not ours: segno (QR), pyStrich (Data Matrix), python-barcode (the linear ones)."""

import io
import random

import barcode
import numpy as np
import segno
from PIL import Image, ImageDraw, ImageFilter
from pystrich.datamatrix import DataMatrixEncoder

# Sides of a finished picture, and of the sheet that it is drawn on: twice as large, reduced at the end.
WIDTH, HEIGHT = 1200, 900
FINER = 2
GROUP_SEPARATOR = "\x1d"


def modules(kind: str, text: str) -> np.ndarray:
    """Dark modules as True, rows from the top, without a quiet zone. A linear code is one row."""
    if kind == "qr":
        return np.array([list(row) for row in segno.make(text, micro=False, boost_error=False).matrix], dtype=bool)
    if kind == "data-matrix":
        cell = 4
        picture = Image.open(io.BytesIO(DataMatrixEncoder(text).get_imagedata(cell))).convert("L")
        dark = np.asarray(picture) < 128
        rows, columns = np.where(dark.any(1))[0], np.where(dark.any(0))[0]
        dark = dark[rows[0] : rows[-1] + 1, columns[0] : columns[-1] + 1]
        # The upper right corner is light: the cut by dark pixels is whole all the same, for the two edges opposite are dark.
        return dark[cell // 2 :: cell, cell // 2 :: cell]
    name = {"code-128": "code128", "gs1-128": "gs1_128", "code-39": "code39", "ean-13": "ean13"}[kind]
    options = {"add_checksum": False} if kind == "code-39" else {}
    bars = barcode.get_barcode_class(name)(text, **options).build()
    assert len(bars) == 1
    return np.array([[bar == "1" for bar in bars[0]]])


def text_for(kind: str, chance: random.Random) -> str:
    """What such a code might say on a plate."""
    serial = f"{chance.choice('TKOVM')}{chance.choice('WX9')}{chance.randrange(10)}-{chance.randrange(10**5):05}"
    if kind in ("qr", "data-matrix"):
        forms = [
            serial,
            f"S/N:{serial}",
            f"https://units.example/u?sn={serial}&model=Add-On%209",
            f"MODEL: Add-On {chance.randrange(20)}\nS/N: {serial}\n230 V 50 Hz",
            f'{{"serial":"{serial}","model":"Yard {chance.randrange(20)}"}}',
        ]
        return chance.choice(forms[: 3 if kind == "data-matrix" else 5])
    if kind == "ean-13":
        digits = f"{chance.randrange(10**12):012}"
        return digits + str(-sum(int(digit) * (3 if at % 2 else 1) for at, digit in enumerate(digits)) % 10)
    if kind == "gs1-128":
        return f"0109506000134352" f"21{serial}"
    return serial


def plate(code: np.ndarray, module: float, chance: random.Random, light=225, dark=35) -> Image.Image:
    """A plate that fills most of the picture, with writing, and one code of so many pixels a module."""
    sheet = Image.new("L", (WIDTH * FINER, HEIGHT * FINER), 150)
    draw = ImageDraw.Draw(sheet)
    draw.rectangle([120, 100, WIDTH * FINER - 120, HEIGHT * FINER - 100], fill=light)
    for line in range(5):
        draw.text((200, 170 + line * 110), chance.choice(["TYPE", "230 V 50 Hz", "R290 0.15 kg", "IP X4", "2.4 MPa"]), fill=dark, font_size=70)
    one = max(1, round(module * FINER))
    rows, columns = code.shape
    linear = rows == 1
    high = columns * one * 3 // 10 if linear else rows * one
    wide = columns * one
    # Quiet zones: ten modules beside linear codes, four around QR, one around Data Matrix and more.
    quiet = one * (12 if linear else 4)
    small = Image.fromarray(np.where(code, dark, light).astype(np.uint8))
    patch = Image.new("L", (wide + 2 * quiet, high + 2 * (quiet if not linear else one * 4)), light)
    patch.paste(small.resize((wide, high), Image.NEAREST), (quiet, (patch.height - high) // 2))
    left = (sheet.width - patch.width) // 2 + chance.randrange(-60, 61)
    top = (sheet.height - patch.height) // 2 + chance.randrange(-60, 61)
    sheet.paste(patch, (left, top))
    return sheet


def seen(sheet: Image.Image, chance: random.Random, turn=0.0, tilt=0.0, blur=0.0, noise=0.0) -> Image.Image:
    """The sheet as a camera sees it: turned by degrees, tilted (0.2 makes one side a fifth shorter), smeared by pixels, grainy."""
    if tilt:
        w, h = sheet.size
        d = tilt * h / 2
        # Where the corners of the picture come from, upper left first, then counter-clockwise.
        sheet = sheet.transform(sheet.size, Image.QUAD, (0, -d, 0, h + d, w, h, w, 0), Image.BICUBIC, fillcolor=150)
    if turn % 90 == 0:
        sheet = sheet.rotate(turn, expand=True)
    elif turn:
        sheet = sheet.rotate(turn, Image.BICUBIC, expand=True, fillcolor=150)
    picture = sheet.resize((sheet.width // FINER, sheet.height // FINER), Image.BOX)
    if blur:
        picture = picture.filter(ImageFilter.GaussianBlur(blur))
    if noise:
        grain = np.random.default_rng(chance.randrange(2**32)).normal(0, noise, (picture.height, picture.width))
        picture = Image.fromarray(np.clip(np.asarray(picture) + grain, 0, 255).astype(np.uint8))
    return picture


def jpeg(picture: Image.Image, quality=88) -> bytes:
    out = io.BytesIO()
    picture.save(out, "JPEG", quality=quality)
    return out.getvalue()
