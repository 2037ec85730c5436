"""Makes photographs for the browser test, with an encoder that is not the one under test (Pillow and piexif).

Each is a different drawing of a unit's side, with grain so that it has a camera's file size, and carries in EXIF its
time with offset, its place and its orientation. Nothing here is random: the same arguments give the same files.
Prints one JSON object a line: file, sha256, bytes, and the EXIF as written.
"""

import argparse
import hashlib
import io
import json
import math
import sys
from datetime import datetime, timedelta
from fractions import Fraction
from pathlib import Path
from random import Random

import piexif
from PIL import Image, ImageChops, ImageDraw

SMALL = (1600, 1200)
LARGE = (4000, 3000)
# How the stored picture is turned to be looked at upright: EXIF 2.32, tag 0x0112 (clause number from memory).
ORIENTATIONS = (1, 6, 3, 8)
STORED_FROM_UPRIGHT = {
    1: None,
    3: Image.Transpose.ROTATE_180,
    6: Image.Transpose.ROTATE_90,
    8: Image.Transpose.ROTATE_270,
}


def draw(size: tuple[int, int], number: int, rng: Random) -> Image.Image:
    """A casing with a finned coil and a fan behind its guard; colours, dirt and places differ from one to the next."""
    width, height = size
    unit = min(size) / 100
    base = tuple(rng.randint(60, 170) for _ in range(3))
    image = Image.new("RGB", size, base)
    pen = ImageDraw.Draw(image)
    for row in range(0, height, max(1, int(unit))):  # light falls from above
        light = int(50 * (1 - row / height))
        pen.rectangle((0, row, width, row + unit), fill=tuple(min(255, c + light) for c in base))

    left, top = width * rng.uniform(0.06, 0.14), height * rng.uniform(0.08, 0.2)
    right, bottom = width * rng.uniform(0.5, 0.6), height * rng.uniform(0.75, 0.92)
    pen.rectangle((left, top, right, bottom), fill=(70, 72, 74))
    pitch = unit * rng.uniform(0.8, 1.4)
    for fin in range(int((right - left) / pitch)):
        x = left + fin * pitch
        pen.line((x, top, x + rng.uniform(-unit / 4, unit / 4), bottom), fill=(190, 192, 188), width=max(1, int(pitch / 3)))
    for _ in range(rng.randint(30, 120)):  # leaves and dust
        x, y, r = rng.uniform(left, right), rng.uniform(top, bottom), unit * rng.uniform(0.4, 2.4)
        pen.ellipse((x - r, y - r / 2, x + r, y + r / 2), fill=(90 + rng.randint(-25, 25), 75, 40))

    cx, cy, radius = width * rng.uniform(0.74, 0.82), height * rng.uniform(0.35, 0.6), min(size) * rng.uniform(0.15, 0.22)
    pen.ellipse((cx - radius, cy - radius, cx + radius, cy + radius), fill=(30, 30, 34))
    turn = rng.uniform(0, math.tau)
    blades = rng.choice((3, 4, 5))
    for blade in range(blades):
        start = math.degrees(turn) + blade * 360 / blades
        pen.pieslice((cx - radius * 0.9, cy - radius * 0.9, cx + radius * 0.9, cy + radius * 0.9), start, start + 34, fill=(95, 98, 104))
    for ring in range(1, 6):
        r = radius * ring / 5
        pen.ellipse((cx - r, cy - r, cx + r, cy + r), outline=(200, 200, 200), width=max(1, int(unit / 3)))

    for bit in range(8):  # the number, as a row of squares, so that two files are never alike at a glance
        x, y = width * 0.7 + bit * unit * 3, height * 0.86
        pen.rectangle((x, y, x + unit * 2, y + unit * 2), fill=(240, 240, 230) if number >> bit & 1 else (20, 20, 20))

    grain = Image.frombytes("L", (400, 300), rng.randbytes(400 * 300)).resize(size)
    return ImageChops.add(image, Image.merge("RGB", [grain.point(lambda v: v // 6)] * 3))


def degrees(value: float) -> tuple[tuple[int, int], ...]:
    """Degrees, minutes and seconds as EXIF rationals; seconds to a ten-thousandth, that is 3 mm."""
    ten_thousandths = round(abs(value) * 3600 * 10_000)
    minutes, seconds = divmod(ten_thousandths, 60 * 10_000)
    return (minutes // 60, 1), (minutes % 60, 1), (seconds, 10_000)


def decimal(value: tuple[tuple[int, int], ...], negative: bool) -> float:
    """The coordinate that `degrees` has written, as a reader will work it out."""
    whole = sum(Fraction(n, d) / 60**place for place, (n, d) in enumerate(value))
    return float(-whole if negative else whole)


def exif(args: argparse.Namespace, at: datetime, orientation: int) -> tuple[bytes, dict]:
    """The EXIF segment, and the same as JSON."""
    stamp = at.strftime("%Y:%m:%d %H:%M:%S")
    written = {"date_time_original": stamp, "offset_time_original": args.offset, "orientation": orientation}
    tags = {
        "0th": {
            piexif.ImageIFD.Orientation: orientation,
            piexif.ImageIFD.DateTime: stamp,
            piexif.ImageIFD.Software: "coilside tests/browser/photos.py",
        },
        "Exif": {
            piexif.ExifIFD.DateTimeOriginal: stamp,
            piexif.ExifIFD.DateTimeDigitized: stamp,
            piexif.ExifIFD.OffsetTime: args.offset,
            piexif.ExifIFD.OffsetTimeOriginal: args.offset,
        },
    }
    if not args.no_place:
        latitude, longitude = degrees(args.latitude), degrees(args.longitude)
        tags["GPS"] = {
            piexif.GPSIFD.GPSVersionID: (2, 3, 0, 0),
            piexif.GPSIFD.GPSLatitudeRef: "S" if args.latitude < 0 else "N",
            piexif.GPSIFD.GPSLatitude: latitude,
            piexif.GPSIFD.GPSLongitudeRef: "W" if args.longitude < 0 else "E",
            piexif.GPSIFD.GPSLongitude: longitude,
            piexif.GPSIFD.GPSHPositioningError: (round(args.doubt_m * 10), 10),
        }
        written |= {
            "latitude": decimal(latitude, args.latitude < 0),
            "longitude": decimal(longitude, args.longitude < 0),
            "doubt_m": args.doubt_m,
        }
    return piexif.dump(tags), written


def make(args: argparse.Namespace) -> list[dict]:
    """Writes the files and returns what stands in them."""
    args.folder.mkdir(parents=True, exist_ok=True)
    made = []
    for index in range(args.count):
        size = LARGE if index == args.count - 1 else SMALL
        orientation = ORIENTATIONS[index % len(ORIENTATIONS)]
        rng = Random(f"{args.seed}/{index}")
        upright = size[::-1] if orientation in (6, 8) else size
        image = draw(upright, index + 1, rng)
        if turn := STORED_FROM_UPRIGHT[orientation]:
            image = image.transpose(turn)
        segment, written = exif(args, args.time + timedelta(seconds=args.step_s * index), orientation)
        buffer = io.BytesIO()
        image.save(buffer, "JPEG", quality=88, exif=segment)
        path = args.folder / f"photo-{index + 1:02}.jpg"
        path.write_bytes(buffer.getvalue())
        made.append(
            {
                "file": str(path.resolve()),
                "sha256": hashlib.sha256(buffer.getvalue()).hexdigest(),
                "bytes": len(buffer.getvalue()),
                "stored_width": image.width,
                "stored_height": image.height,
                "exif": written,
            }
        )
    return made


def arguments(argv: list[str]) -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("folder", type=Path)
    parser.add_argument("--count", type=int, default=12, help="how many; the last is 4000×3000, the others 1600×1200")
    parser.add_argument("--latitude", type=float, help="degrees, north positive")
    parser.add_argument("--longitude", type=float, help="degrees, east positive")
    parser.add_argument("--doubt-m", type=float, default=6.0, help="GPSHPositioningError, metres")
    parser.add_argument("--no-place", action="store_true", help="leave the place out, as galleries do")
    parser.add_argument("--time", type=datetime.fromisoformat, default=datetime(2026, 3, 9, 9, 0, 0), help="local time of the first")
    parser.add_argument("--offset", default="+01:00", help="zone offset of these times")
    parser.add_argument("--step-s", type=int, default=180, help="seconds from one to the next")
    parser.add_argument("--seed", default="coilside")
    args = parser.parse_args(argv)
    if not 1 <= args.count <= 255:
        parser.error("--count must be 1 to 255")
    if args.no_place:
        return args
    if args.latitude is None or args.longitude is None:
        parser.error("give --latitude and --longitude, or --no-place")
    if not (-90 <= args.latitude <= 90 and -180 <= args.longitude <= 180):
        parser.error("--latitude must be -90 to 90 and --longitude -180 to 180")
    return args


if __name__ == "__main__":
    for line in make(arguments(sys.argv[1:])):
        print(json.dumps(line))
