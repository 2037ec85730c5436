"""Intake against others: EXIF against ExifTool, previews against Pillow's, sharpness in order, hostile files.

The files are written by Pillow and piexif and taken in by `tests/bench/src/bin/photographs.rs`.
"""

import io
import itertools
import json
import random
import struct
import subprocess
import tempfile
import unittest
import zlib
from pathlib import Path

import numpy as np
import piexif
from PIL import Image, ImageFilter, ImageOps
from scipy.ndimage import gaussian_filter

from photo_scenes import scene

ROOT = Path(__file__).resolve().parents[2]
UTC_MS, OFFSET_MIN = 1_772_352_000_000, 120  # 2026-03-01 10:00 at +02:00


def take_in(files: list[Path], shelf: Path) -> list[dict]:
    """One process takes in all of them, one after another."""
    # Built with everything else by tests/run.
    command = [str(ROOT / "target/debug/photographs"), str(shelf), str(UTC_MS), str(OFFSET_MIN)]
    names = "".join(f"{file}\n" for file in files)
    out = subprocess.run(command, cwd=ROOT, input=names, capture_output=True, text=True, check=True)
    return [json.loads(line) for line in out.stdout.splitlines()]


def jpeg(picture: Image.Image, **options) -> bytes:
    out = io.BytesIO()
    picture.save(out, "JPEG", **options)
    return out.getvalue()


def size_of(file) -> tuple[int, int]:
    with Image.open(file) as picture:
        return picture.size


def ssim(one: np.ndarray, other: np.ndarray) -> float:
    """Mean structural similarity of two grey pictures: Wang, Bovik, Sheikh and Simoncelli 2004, Gaussian window, σ = 1.5."""
    one, other = one.astype(float), other.astype(float)
    blur = lambda picture: gaussian_filter(picture, 1.5)  # noqa: E731
    mean_1, mean_2 = blur(one), blur(other)
    var_1, var_2 = blur(one * one) - mean_1**2, blur(other * other) - mean_2**2
    both = blur(one * other) - mean_1 * mean_2
    c1, c2 = (0.01 * 255) ** 2, (0.03 * 255) ** 2
    index = (2 * mean_1 * mean_2 + c1) * (2 * both + c2) / ((mean_1**2 + mean_2**2 + c1) * (var_1 + var_2 + c2))
    return float(index.mean())


class Folder(unittest.TestCase):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = Path(folder.name)
        self.files = []

    def write(self, name: str, content: bytes) -> Path:
        file = self.folder / name
        file.write_bytes(content)
        self.files.append(file)
        return file

    def taken_in(self) -> list[dict]:
        told = take_in(self.files, self.folder / "shelf")
        self.assertEqual(len(told), len(self.files))
        return told


class Exif(Folder):
    """ExifTool (Debian's libimage-exiftool-perl) reads the same files: 8 × 5 × 4 × 2 sound ones and some broken ones."""

    OFFSETS = ("+00:00", "-03:30", "+05:45", "+14:00", None)

    def written(self, gps: dict, orientation: int = 1, offset: str | None = "+02:00") -> bytes:
        fields = {piexif.ExifIFD.DateTimeOriginal: b"2026:03:01 09:58:30"}
        if offset:
            fields[piexif.ExifIFD.OffsetTimeOriginal] = offset.encode()
        exif = piexif.dump({"0th": {piexif.ImageIFD.Orientation: orientation}, "Exif": fields, "GPS": gps})
        return jpeg(Image.new("RGB", (24, 16), (90, 120, 30)), exif=exif)

    def gps(self, north, east, latitude, longitude) -> dict:
        ids = piexif.GPSIFD
        return {
            ids.GPSLatitudeRef: north,
            ids.GPSLatitude: latitude,
            ids.GPSLongitudeRef: east,
            ids.GPSLongitude: longitude,
        }

    def test_every_orientation_offset_hemisphere_and_way_to_write_degrees_is_read_as_exiftool_reads_it(self):
        draw = random.Random(6)
        for orientation, offset, (north, east), whole in itertools.product(
            range(1, 9), self.OFFSETS, itertools.product("NS", "EW"), (True, False)
        ):
            def angle(most):
                if whole:
                    return ((draw.randrange(most), 1), (draw.randrange(60), 1), (draw.randrange(6000), 100))
                return ((draw.randrange(most * 1_000_000), 1_000_000), (0, 1), (0, 1))

            gps = self.gps(north, east, angle(90), angle(180))
            self.write(f"{len(self.files)}.jpg", self.written(gps, orientation, offset))
        self.assertEqual(len(self.files), 320)
        listed = subprocess.run(
            ["exiftool", "-json", "-n", "-Orientation", "-DateTimeOriginal", "-OffsetTimeOriginal",
             "-Composite:GPSLatitude", "-Composite:GPSLongitude", *map(str, self.files)],
            capture_output=True, text=True, check=True,
        )
        for other, ours in zip(json.loads(listed.stdout), self.taken_in(), strict=True):
            with self.subTest(other["SourceFile"]):
                facts = ours["facts"]
                self.assertEqual(facts["orientation"], other["Orientation"])
                self.assertEqual(facts["taken"], other["DateTimeOriginal"])
                self.assertEqual(facts.get("offset"), other.get("OffsetTimeOriginal"))
                latitude, longitude = map(float, facts["exif_place"].split())
                # Written with five decimals: half of the last.
                self.assertAlmostEqual(latitude, other["GPSLatitude"], delta=6e-6)
                self.assertAlmostEqual(longitude, other["GPSLongitude"], delta=6e-6)

    def test_broken_rationals_hide_the_place_and_nothing_else(self):
        sound = ((8, 1), (15, 1), (0, 1))
        cases = {  # latitude: what is told of it
            ((50, 1), (30, 1), (0, 0)): "50.50000",  # nothing over nothing is how a part is left out
            ((50, 1), (0, 0), (0, 0)): "50.00000",
            ((50, 0), (30, 1), (0, 1)): None,
            ((0, 0), (0, 0), (0, 0)): None,
            ((50, 1), (30, 0), (0, 1)): None,
            ((91, 1), (0, 1), (0, 1)): None,
            ((50, 1), (61, 1), (0, 1)): None,
            ((4_294_967_295, 1), (0, 1), (0, 1)): None,
        }
        for latitude in cases:
            self.write(f"{len(self.files)}.jpg", self.written(self.gps("N", "E", latitude, sound)))
        self.write("no hemisphere.jpg", self.written(self.gps("?", "E", ((50, 1), (0, 1), (0, 1)), sound)))
        self.write("zeros.jpg", self.written(self.gps("N", "E", ((0, 1),) * 3, ((0, 1),) * 3)))
        expected = [place and f"{place} 8.25000" for place in cases.values()] + [None, None]
        told = self.taken_in()
        self.assertEqual([one["facts"].get("exif_place") for one in told], expected)
        self.assertEqual({one["facts"]["taken"] for one in told}, {"2026:03:01 09:58:30"})

    def test_directories_that_lead_in_circles_are_read_once(self):
        whole = self.written(self.gps("N", "E", ((50, 1), (0, 1), (0, 1)), ((8, 1), (0, 1), (0, 1))))
        at = whole.index(b"Exif\0\0") + 6
        order = ">" if whole[at : at + 2] == b"MM" else "<"
        first = struct.unpack_from(order + "I", whole, at + 4)[0]
        count = struct.unpack_from(order + "H", whole, at + first)[0]
        looped = bytearray(whole)
        struct.pack_into(order + "I", looped, at + first + 2 + 12 * count, first)  # the next directory is the first
        self.write("looped.jpg", bytes(looped))
        for entry in range(count):  # the directory of the camera's own fields is the first, too
            where = at + first + 2 + 12 * entry
            if struct.unpack_from(order + "H", whole, where)[0] == 0x8769:
                struct.pack_into(order + "I", looped, where + 8, first)
        self.write("looped twice.jpg", bytes(looped))
        told = self.taken_in()
        self.assertEqual(told[0]["facts"]["taken"], "2026:03:01 09:58:30")
        self.assertEqual(told[1]["facts"]["orientation"], 1)


class Previews(Folder):
    def test_previews_look_as_pillows_do(self):
        large, small = scene(3, 2600, 1951), scene(4, 900, 701)
        ways = {
            "4:2:0": jpeg(large, quality=92, subsampling=2),
            "4:2:2": jpeg(large, quality=92, subsampling=1),
            "4:4:4": jpeg(large, quality=92, subsampling=0),
            "grey": jpeg(large.convert("L"), quality=92),
            "progressive": jpeg(large, quality=92, progressive=True),
            "small": jpeg(small, quality=92),
            "larger": jpeg(scene(5, 3600, 2401), quality=90),
            "portrait": jpeg(large.rotate(90, expand=True), quality=90),
        }
        for orientation in range(1, 9):
            exif = piexif.dump({"0th": {piexif.ImageIFD.Orientation: orientation}})
            ways[f"orientation {orientation}"] = jpeg(small, quality=92, exif=exif)
        for name, picture in {"rgb": large, "grey": large.convert("L"), "palette": small.quantize(64), "16": small}.items():
            out = io.BytesIO()
            if name == "16":
                picture = Image.fromarray(np.asarray(picture.convert("L")).astype(np.uint16) * 257)
            picture.save(out, "PNG")
            ways[f"png {name}"] = out.getvalue()
        for lossless in (False, True):
            out = io.BytesIO()
            large.save(out, "WEBP", lossless=lossless, quality=90)
            ways[f"webp {lossless}"] = out.getvalue()
        for name, content in ways.items():
            self.write(name.replace(":", ""), content)
        for name, file, told in zip(ways, self.files, self.taken_in(), strict=True):
            with self.subTest(name):
                ours = Image.open(told["preview"])
                theirs = ImageOps.exif_transpose(Image.open(file))
                if name == "png 16":
                    theirs = small.convert("L")  # Pillow turns 16 bits to 8 by cutting off, not by scaling
                theirs = theirs.convert("RGB").resize(ours.size, Image.Resampling.LANCZOS)
                self.assertEqual(max(ours.size), min(1600, max(size_of(file))))
                grey = [np.asarray(one.convert("L")) for one in (ours, theirs)]
                similarity = ssim(*grey)
                print(f"SSIM {similarity:.4f}  {name}")
                self.assertGreaterEqual(similarity, 0.95)
                colour = [np.asarray(one.convert("YCbCr"), dtype=float)[..., 1:] for one in (ours, theirs)]
                self.assertLess(np.abs(colour[0].mean((0, 1)) - colour[1].mean((0, 1))).max(), 1.5, "its colours")


class Sharpness(Folder):
    def test_blurred_versions_of_fifty_pictures_come_in_order_and_the_worst_are_named(self):
        blurs = (0, 1, 2, 3, 5)  # standard deviations, pixels of the preview
        for seed in range(50):
            picture = scene(100 + seed, 800, 600)
            for blur in blurs:
                self.write(f"{seed}-{blur}.jpg", jpeg(picture.filter(ImageFilter.GaussianBlur(blur)), quality=90))
        told = self.taken_in()
        for seed in range(50):
            of_one = told[seed * len(blurs) : (seed + 1) * len(blurs)]
            sharpness = [one["facts"]["look"]["sharpness"] for one in of_one]
            with self.subTest(seed=seed):
                self.assertTrue(all(a > b for a, b in itertools.pairwise(sharpness)), sharpness)
                self.assertNotIn("blurred", of_one[0]["flags"], sharpness)
                self.assertIn("blurred", of_one[-1]["flags"], sharpness)

    def test_dark_and_burnt_out_pictures_are_named(self):
        picture = scene(1, 800, 600)
        for gain in (0.05, 1.0, 4.0):
            self.write(f"{gain}.jpg", jpeg(picture.point(lambda value: min(255, int(value * gain))), quality=90))
        dark, good, burnt = (set(one["flags"]) & {"dark", "blown-out"} for one in self.taken_in())
        self.assertEqual((dark, good, burnt), ({"dark"}, set(), {"blown-out"}))


class Hostile(Folder):
    HELD_KB_MAX = 64_000_000 // 1024

    def test_a_bomb_of_a_hundred_megapixels_is_reduced_row_by_row(self):
        width, height = 10_000, 9_999
        packer = zlib.compressobj(9)
        rows = b"".join(packer.compress(bytes(width + 1)) for _ in range(height)) + packer.flush()
        chunk = lambda kind, data: (  # noqa: E731
            struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))
        )
        head = struct.pack(">IIBBBBB", width, height, 8, 0, 0, 0, 0)
        png = b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", rows) + chunk(b"IEND", b"")
        self.assertLess(len(png), 200_000)
        self.write("bomb.png", png)
        [told] = self.taken_in()
        self.assertEqual(size_of(told["preview"]), (1600, 1600))
        self.assertLess(told["held_kb"], self.HELD_KB_MAX)

    def test_fifty_megapixels_stay_under_64_mb(self):
        self.write("50.jpg", jpeg(scene(7, 4080, 3060).resize((8160, 6120)), quality=93))
        [told] = self.taken_in()
        self.assertEqual(size_of(told["preview"]), (1600, 1200))
        print(f"held {told['held_kb']} kB for a file of {self.files[0].stat().st_size} bytes")
        self.assertLess(told["held_kb"], self.HELD_KB_MAX)

    def test_a_progressive_picture_that_would_need_more_is_kept_without_a_preview(self):
        self.write("50.jpg", jpeg(Image.new("RGB", (8160, 6120), (9, 90, 9)), progressive=True))
        [told] = self.taken_in()
        self.assertIn("no-preview", told["flags"])
        self.assertEqual(Path(told["original"]).read_bytes(), self.files[0].read_bytes())
        self.assertLess(told["held_kb"], self.HELD_KB_MAX)

    def test_four_colours_are_kept_without_a_preview(self):
        self.write("cmyk.jpg", jpeg(Image.new("CMYK", (300, 300), (9, 90, 9, 0))))
        [told] = self.taken_in()
        self.assertIn("no-preview", told["flags"])

    def test_a_file_that_breaks_off_anywhere_is_refused(self):
        whole = {}
        picture = scene(8, 640, 480)
        for kind in ("JPEG", "PNG", "WEBP"):
            out = io.BytesIO()
            picture.save(out, kind)
            whole[kind] = out.getvalue()
        for kind, content in whole.items():
            for part in range(1, 12):
                self.write(f"{part}.{kind}", content[: len(content) * part // 12])
        for file, told in zip(self.files, self.taken_in(), strict=True):
            self.assertIn("refused", told, file.name)


if __name__ == "__main__":
    unittest.main()
