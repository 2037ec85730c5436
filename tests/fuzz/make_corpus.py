#!/usr/bin/env python3
"""Writes the beginnings of the intake's corpus: small files of every kind that is taken, and broken ones. Needs Pillow and piexif.

    tests/fuzz/make_corpus.py FOLDER

What fuzzing found beside them stays in the folder.
"""

import io
import pathlib
import struct
import sys

import piexif
from PIL import Image

EXIF = piexif.dump(
    {
        "0th": {piexif.ImageIFD.Orientation: 6},
        "Exif": {
            piexif.ExifIFD.DateTimeOriginal: b"2026:03:01 09:58:30",
            piexif.ExifIFD.OffsetTimeOriginal: b"-03:30",
        },
        "GPS": {
            piexif.GPSIFD.GPSLatitudeRef: "S",
            piexif.GPSIFD.GPSLatitude: ((33, 1), (27, 1), (404, 100)),
            piexif.GPSIFD.GPSLongitudeRef: "E",
            piexif.GPSIFD.GPSLongitude: ((151, 1), (0, 0), (0, 0)),
        },
    }
)


def picture(width: int, height: int) -> Image.Image:
    return Image.frombytes("RGB", (width, height), bytes((x * 7 + y * 13) % 251 for y in range(height) for x in range(width * 3)))


def saved(image: Image.Image, kind: str, **options) -> bytes:
    out = io.BytesIO()
    image.save(out, kind, **options)
    return out.getvalue()


def files():
    small, wide = picture(40, 30), picture(2400, 9)
    yield "exif.jpg", saved(small, "JPEG", quality=60, exif=EXIF)
    yield "progressive.jpg", saved(small, "JPEG", quality=60, progressive=True)
    yield "444.jpg", saved(small, "JPEG", quality=60, subsampling=0)
    yield "422.jpg", saved(picture(39, 31), "JPEG", quality=60, subsampling=1)
    yield "grey.jpg", saved(small.convert("L"), "JPEG", quality=60)
    yield "cmyk.jpg", saved(small.convert("CMYK"), "JPEG", quality=60)
    yield "wide.jpg", saved(wide, "JPEG", quality=30)
    yield "restarts.jpg", saved(small, "JPEG", quality=60, restart_marker_rows=1)
    whole = saved(small, "JPEG", quality=60, exif=EXIF)
    yield "cut.jpg", whole[: len(whole) // 2] + b"\xff\xd9"
    frame = next(at for at in range(len(whole)) if whole[at : at + 2] == b"\xff\xc0")
    yield "huge.jpg", whole[: frame + 5] + struct.pack(">HH", 65535, 65535) + whole[frame + 9 :]
    tiff = whole.index(b"Exif\0\0") + 6
    first = struct.unpack_from(">I", whole, tiff + 4)[0]
    looped = bytearray(whole)
    count = struct.unpack_from(">H", whole, tiff + first)[0]
    struct.pack_into(">I", looped, tiff + first + 2 + 12 * count, first)
    yield "looped.jpg", bytes(looped)
    yield "rgb.png", saved(small, "PNG", exif=EXIF)
    yield "palette.png", saved(small.quantize(7), "PNG")
    yield "alpha.png", saved(small.convert("RGBA"), "PNG")
    yield "bit.png", saved(small.convert("1"), "PNG")
    yield "lossy.webp", saved(small, "WEBP", quality=40, exif=EXIF)
    yield "lossless.webp", saved(small, "WEBP", lossless=True)
    yield "alpha.webp", saved(small.convert("RGBA"), "WEBP", quality=40)
    yield "moving.webp", saved(small, "WEBP", save_all=True, append_images=[small.rotate(90)], quality=30)
    yield "first-box.heic", b"\0\0\0\x18ftypheic\0\0\0\0mif1heic" + b"\0\0\0\x10meta\0\0\0\0iloc"
    yield "only-the-marker.jpg", b"\xff\xd8\xff"
    yield "pdf", b"%PDF-1.7"


def main(folder: str) -> None:
    for name, content in files():
        (pathlib.Path(folder) / name).write_bytes(content)


if __name__ == "__main__":
    main(sys.argv[1])
