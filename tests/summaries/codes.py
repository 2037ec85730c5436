"""The office's page as a code, as summaries carry it, read by another program (zxing-cpp): on a telephone's screen, as Chromium draws
it in page.test.mjs, and on paper, at the resolutions of a poor and of a usual printer."""

import subprocess
import tempfile
import unittest
from pathlib import Path

import zxingcpp
from PIL import Image

FOLDER = Path(__file__).resolve().parents[2] / "target" / "link-codes"
NAMES = ("short", "long")
# Dots an inch: a coarse print, a usual preview, a usual printer.
PRINTED_DPI = (100, 150, 300)


def address(name: str) -> str:
    return (FOLDER / f"{name}.txt").read_text()


def read(file: Path) -> list[str]:
    with Image.open(file) as picture:
        return [code.text for code in zxingcpp.read_barcodes(picture.convert("L"), formats=zxingcpp.BarcodeFormat.QRCode)]


class LinkCodes(unittest.TestCase):
    def test_the_code_on_a_telephones_screen_says_the_offices_page(self):
        for name in NAMES:
            for scheme in ("light", "dark"):
                self.assertEqual(read(FOLDER / f"{name}-{scheme}.png"), [address(name)], f"{name} {scheme}")

    def test_the_printed_code_says_the_offices_page(self):
        with tempfile.TemporaryDirectory() as folder:
            for name in NAMES:
                for dpi in PRINTED_DPI:
                    root = Path(folder) / f"{name}-{dpi}"
                    subprocess.run(["pdftoppm", "-gray", "-r", str(dpi), str(FOLDER / f"{name}.pdf"), str(root)], check=True)
                    pages = sorted(Path(folder).glob(f"{root.name}-*.pgm"))
                    self.assertEqual([text for page in pages for text in read(page)], [address(name)], root.name)


if __name__ == "__main__":
    unittest.main()
