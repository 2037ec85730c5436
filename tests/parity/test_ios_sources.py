"""What the sources of the iOS shell may not hold, and what they must find."""

import re
import unittest

from sources import ROOT

IOS = ROOT / "ios"
# The trade's own words. 'scale' is left out: charts have one.
DOMAIN = (
    "coil acid alkali heat refrigerant pump descal limescale water exchanger compressor condens evaporat boiler glycol "
    "hydraul tank brine fan fin solder drain pressure temperature chlorin legionel"
).split()


def hand_written():
    """Sources, project files and scripts, but not what is generated and not tests."""
    generated = {"CoilsideCore.swift", "CoilsideFFI.h", "drawings.json"}
    for file in sorted(IOS.rglob("*")):
        inside = file.relative_to(IOS).parts
        if file.is_file() and not {".build", "Tests"} & set(inside) and not any(part.endswith(".xcframework") for part in inside):
            if file.name not in generated and file.suffix in {".swift", ".plist", ".xcprivacy", ".yml", ".modulemap", ".c", ".strings", ""}:
                yield file


def words(text: str):
    """The words of a text and of the names in it: `heatPump` has two."""
    apart = re.sub(r"(?<=[a-z])(?=[A-Z])", " ", text.replace("Coilside", "").replace("coilside", "").replace("COILSIDE", ""))
    return re.findall(r"[a-z]+", apart.lower())


class IosSources(unittest.TestCase):
    def test_no_domain_word_stands_in_them(self):
        files = list(hand_written())
        self.assertGreater(len(files), 50)
        found = []
        for file in files:
            for word in set(words(file.read_text(encoding="utf-8"))):
                # Short ones are whole words: 'fin' stands in 'find' too.
                if any(word == of or len(of) > 3 and word.startswith(of) for of in DOMAIN):
                    found.append(f"{file.relative_to(ROOT)}: {word}")
        self.assertEqual(found, [])

    def test_every_word_that_they_say_is_there_in_both_languages(self):
        asked = set()
        for file in (IOS / "Sources").rglob("*.swift"):
            if file.name != "CoilsideCore.swift":
                asked |= set(re.findall(r'"(shell-[a-z-]+)"', file.read_text(encoding="utf-8")))
        self.assertGreater(len(asked), 40)
        for language in ("en", "es"):
            text = (ROOT / f"core/src/words/{language}/shell.ftl").read_text(encoding="utf-8")
            there = set(re.findall(r"^(shell-[a-z-]+) =", text, re.M))
            self.assertEqual(sorted(asked - there), [], language)

    def test_every_reason_that_the_system_asks_for_stands_in_the_property_list(self):
        """What a source uses must have its reason: without one the system ends the app."""
        code = "".join(file.read_text(encoding="utf-8") for file in (IOS / "Sources/CoilsideApp").rglob("*.swift"))
        plist = (IOS / "App/Info.plist").read_text(encoding="utf-8")
        for used, key in [
            ("AVCaptureDevice", "NSCameraUsageDescription"),
            ("requestWhenInUseAuthorization", "NSLocationWhenInUseUsageDescription"),
        ]:
            self.assertIn(used, code)
            self.assertRegex(plist, rf"<key>{key}</key>\s*<string>.{{20,}}</string>")


if __name__ == "__main__":
    unittest.main()
