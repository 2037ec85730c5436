"""The photographs made for the browser test, read back by Pillow's own EXIF reader (they are written by piexif)."""

import hashlib
import json
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

from PIL import ExifTags, Image

PHOTOS = Path(__file__).resolve().parents[1] / "browser" / "photos.py"


def make(folder: str, *more: str) -> list[dict]:
    out = subprocess.run([sys.executable, str(PHOTOS), folder, *more], check=True, capture_output=True, text=True)
    return [json.loads(line) for line in out.stdout.splitlines()]


def coordinate(parts, ref: str) -> float:
    whole = float(parts[0]) + float(parts[1]) / 60 + float(parts[2]) / 3600
    return -whole if ref in "SW" else whole


class Photographs(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.folder = tempfile.TemporaryDirectory()
        cls.addClassCleanup(cls.folder.cleanup)
        cls.made = make(
            cls.folder.name, "--count", "5", "--latitude", "-33.4512", "--longitude", "151.2034", "--offset=-03:30"
        )

    def test_each_file_is_different_and_has_the_digest_that_was_printed(self):
        digests = {hashlib.sha256(Path(one["file"]).read_bytes()).hexdigest() for one in self.made}
        self.assertEqual(digests, {one["sha256"] for one in self.made})
        self.assertEqual(len(digests), 5)

    def test_the_last_is_twelve_megapixels_and_the_others_four_to_three(self):
        sizes = [Image.open(one["file"]).size for one in self.made]
        self.assertEqual(sizes, [(1600, 1200)] * 4 + [(4000, 3000)])

    def test_another_reader_finds_time_offset_and_orientation(self):
        for index, one in enumerate(self.made):
            exif = Image.open(one["file"]).getexif()
            more = exif.get_ifd(ExifTags.IFD.Exif)
            self.assertEqual(more[ExifTags.Base.DateTimeOriginal], f"2026:03:09 09:{index * 3:02}:00")
            self.assertEqual(more[ExifTags.Base.OffsetTimeOriginal], "-03:30")
            self.assertEqual(exif[ExifTags.Base.Orientation], (1, 6, 3, 8, 1)[index])

    def test_another_reader_finds_the_place_within_a_centimetre(self):
        for one in self.made:
            gps = Image.open(one["file"]).getexif().get_ifd(ExifTags.IFD.GPSInfo)
            # 1e-7 degrees of latitude are 1.1 cm.
            self.assertAlmostEqual(coordinate(gps[2], gps[1]), -33.4512, delta=1e-7)
            self.assertAlmostEqual(coordinate(gps[4], gps[3]), 151.2034, delta=1e-7)

    def test_the_place_can_be_left_out(self):
        with tempfile.TemporaryDirectory() as folder:
            one = make(folder, "--count", "1", "--no-place")[0]
            self.assertNotIn("latitude", one["exif"])
            self.assertFalse(Image.open(one["file"]).getexif().get_ifd(ExifTags.IFD.GPSInfo))

    def test_the_same_arguments_give_the_same_bytes(self):
        with tempfile.TemporaryDirectory() as folder:
            again = make(folder, "--count", "1", "--latitude", "1", "--longitude", "2")[0]
            once_more = make(folder, "--count", "1", "--latitude", "1", "--longitude", "2")[0]
            self.assertEqual(again["sha256"], once_more["sha256"])
