"""A record file, verified by its own README.txt and by libraries that are not ours.

The file is the sample of `core/examples/sample_record.rs`; COILSIDE_SAMPLE_RECORD says where it is.
"""

import base64
import hashlib
import io
import json
import os
import re
import subprocess
import sys
import tempfile
import unittest
import zipfile
from pathlib import Path

import rfc8785
from joserfc import jws as other_jws
from joserfc.jwk import ECKey
from jwcrypto import jwk, jws

SAMPLE = Path(os.environ.get("COILSIDE_SAMPLE_RECORD", "target/records/sample.zip"))


def part(text):
    return base64.urlsafe_b64decode(text + "=" * (-len(text) % 4))


def unpacked(folder):
    with zipfile.ZipFile(SAMPLE) as file:
        file.extractall(folder)
    return Path(folder)


class Readme(unittest.TestCase):
    """By its words: unpacked into an empty folder, and the command that it tells given to a shell there."""

    def follow(self, folder):
        readme = (folder / "README.txt").read_text("utf-8")
        for word in ("Python 3", "pip install jwcrypto", "STEP 5", "PASO 5"):
            self.assertIn(word, readme)
        [command] = re.findall(r"^python3 .*$", readme, flags=re.M)
        # Nothing of ours is there: the shell finds a Python 3 with jwcrypto, and no path of the project.
        path = os.path.dirname(sys.executable) + os.pathsep + os.defpath
        return subprocess.run(
            ["sh", "-c", command], cwd=folder, env={"PATH": path}, capture_output=True, text=True, timeout=120
        )

    def test_a_person_who_follows_it_finds_that_the_record_holds(self):
        with tempfile.TemporaryDirectory() as folder:
            done = self.follow(unpacked(folder))
            self.assertEqual(done.returncode, 0, done.stderr)
            for number in range(1, 6):
                self.assertIn(f"step {number} holds", done.stdout)
            self.assertIn("A photograph missing coil-after: battery empty", done.stdout)

    def test_a_person_who_follows_it_finds_each_forgery(self):
        def photograph(folder):
            path = sorted((folder / "photographs").iterdir())[0]
            path.write_bytes(b"x" + path.read_bytes()[1:])

        def event(folder):
            path = folder / "record.json"
            path.write_bytes(path.read_bytes().replace(b"casing-before", b"casing-BEFORE"))

        def removed(folder):
            path = folder / "record.json"
            record = json.loads(path.read_bytes())
            del record["events"][3]
            path.write_bytes(rfc8785.dumps(record))

        def foreign_key(folder):
            key = jwk.JWK.generate(kty="EC", crv="P-256")
            path = folder / "record.json"
            record = json.loads(path.read_bytes())
            seals = []
            for seal in record["seals"]:
                token = jws.JWS(part(seal.split(".")[1]))
                token.add_signature(key, None, part(seal.split(".")[0]).decode())
                seals.append(token.serialize(compact=True))
            record["seals"] = seals
            path.write_bytes(rfc8785.dumps(record))
            (folder / "keys" / "device.jwk").write_text(key.export_public())

        def signature(folder):
            [path] = (folder / "customer").iterdir()
            path.write_bytes(path.read_bytes().replace(b"[180,90]", b"[180,91]"))

        def added(folder):
            (folder / "photographs" / "extra.jpg").write_bytes(b"new")

        for change, told in [
            (photograph, "was altered"),
            (event, "was altered"),
            (signature, "was altered"),
            (removed, "is out of place"),
            (foreign_key, "the key is not that of the last device that wrote the visit"),
            (added, "extra.jpg"),
        ]:
            for sums_made_anew in (False, True):
                with self.subTest(change=change.__name__, sums=sums_made_anew), tempfile.TemporaryDirectory() as folder:
                    folder = unpacked(folder)
                    change(folder)
                    if sums_made_anew:
                        self.sum_anew(folder)
                    done = self.follow(folder)
                    self.assertNotEqual(done.returncode, 0, done.stdout)
                    last = done.stderr.strip().splitlines()[-1]
                    if sums_made_anew and change is added:
                        # Nothing that the record names was touched; only the office's word is about another list.
                        told = "the list was altered"
                    if sums_made_anew and change is event:
                        told = "does not follow the one before: one of the two was altered"
                    if sums_made_anew or change in (photograph, signature, added):
                        self.assertIn(told, last)
                    else:
                        self.assertIn("was altered", last)

    def test_a_signature_that_is_not_enclosed_is_said_to_be_withheld(self):
        with tempfile.TemporaryDirectory() as folder:
            folder = unpacked(folder)
            [path] = (folder / "customer").iterdir()
            path.unlink()
            (folder / "customer").rmdir()
            self.sum_anew(folder)
            done = self.follow(folder)
            self.assertIn("name and signature are withheld: " + path.stem[:16], done.stdout)
            self.assertIn("step 4 holds", done.stdout)
            # The sample's office signed the list with it; a record that an office writes without it is signed without it.
            self.assertIn("the list was altered", done.stderr.strip().splitlines()[-1])

    @staticmethod
    def sum_anew(folder):
        files = [path for path in folder.rglob("*") if path.is_file()]
        names = sorted(path.relative_to(folder).as_posix() for path in files)
        lines = [
            f"{hashlib.sha256((folder / name).read_bytes()).hexdigest()}  {name}\n"
            for name in names
            if name not in ("SHA256SUMS", "office.jws")
        ]
        (folder / "SHA256SUMS").write_text("".join(lines))

    def test_sha256sum_checks_the_files_as_it_says(self):
        with tempfile.TemporaryDirectory() as folder:
            command = ["sha256sum", "--check", "--strict", "SHA256SUMS"]
            done = subprocess.run(command, cwd=unpacked(folder), capture_output=True, text=True)
            self.assertEqual(done.returncode, 0, done.stderr)


class Libraries(unittest.TestCase):
    """Two JOSE libraries (jwcrypto, joserfc), RFC 8785 (the library of that name), ZIP (Python's own)."""

    def setUp(self):
        self.file = zipfile.ZipFile(SAMPLE)
        self.record = json.loads(self.file.read("record.json"))

    def tearDown(self):
        self.file.close()

    def statements(self):
        device = self.file.read("keys/device.jwk").decode()
        yield from ((seal, device) for seal in self.record["seals"])
        for number, office in enumerate(self.record["offices"], 1):
            key = self.file.read(f"keys/office-{number}.jwk").decode()
            yield office["certificate"], key
            yield from ((receipt, key) for receipt in office["receipts"])
            yield self.file.read("office.jws").decode(), key

    def test_every_statement_holds_under_its_key_by_both_and_not_when_it_is_changed(self):
        count = 0
        for statement, key in self.statements():
            token = jws.JWS()
            token.deserialize(statement)
            token.verify(jwk.JWK.from_json(key))
            other_key = ECKey.import_key(json.loads(key))
            read = other_jws.deserialize_compact(statement, other_key, algorithms=["ES256"])
            self.assertEqual(read.payload, token.payload)
            self.assertEqual(rfc8785.dumps(json.loads(token.payload)), token.payload, "canonical JSON")
            head, payload, signature = statement.split(".")
            payload = ("B" if payload[20] == "A" else "A").join((payload[:20], payload[21:]))
            changed = ".".join((head, payload, signature))
            with self.assertRaises(jws.InvalidJWSSignature):
                token = jws.JWS()
                token.deserialize(changed)
                token.verify(jwk.JWK.from_json(key))
            with self.assertRaises(Exception):
                other_jws.deserialize_compact(changed, other_key, algorithms=["ES256"])
            count += 1
        self.assertEqual(count, 5, "two seals, a certificate, a receipt, the office's word over the list")

    def test_record_json_and_every_event_are_canonical(self):
        self.assertEqual(rfc8785.dumps(self.record), self.file.read("record.json"))
        for text in self.record["events"]:
            self.assertEqual(rfc8785.dumps(json.loads(text)).decode(), text)

    def test_the_customers_signature_is_the_one_that_the_sealed_event_names(self):
        """SHA-256 by hashlib, canonical form by the library rfc8785; whole numbers only, inside of the box."""
        [name] = [name for name in self.file.namelist() if name.startswith("customer/")]
        noted = [json.loads(text) for text in self.record["events"] if json.loads(text)["kind"] == "customer-noted"]
        self.assertEqual([(event["present"], set(event)) for event in noted],
                         [(True, {"kind", "present", "prev", "seq", "shown", "time", "visit"})])
        enclosed = self.file.read(name)
        self.assertEqual(hashlib.sha256(enclosed).hexdigest(), noted[0]["shown"])
        self.assertEqual(name, f"customer/{noted[0]['shown']}.json")
        shown = json.loads(enclosed)
        self.assertEqual(rfc8785.dumps(shown), enclosed)
        self.assertEqual((shown["name"], len(bytes.fromhex(shown["salt"]))), ("Edda Marsh", 32))
        points = [point for stroke in shown["strokes"] for point in stroke]
        self.assertEqual((len(shown["strokes"]), len(points)), (2, 5))
        for x, y in points:
            self.assertTrue(type(x) is int and type(y) is int and 0 <= x <= shown["width"] and 0 <= y <= shown["height"])
        for altered in (dict(shown, name="Edda Marsh-Weaver"), dict(shown, strokes=shown["strokes"][:1])):
            self.assertNotEqual(hashlib.sha256(rfc8785.dumps(altered)).hexdigest(), noted[0]["shown"])
        # Without the salt nobody finds the name by trying.
        bare = {key: value for key, value in shown.items() if key != "salt"}
        self.assertNotEqual(hashlib.sha256(rfc8785.dumps(bare)).hexdigest(), noted[0]["shown"])

    def test_the_zip_is_a_sound_one_and_stores_everything_without_time(self):
        self.assertIsNone(self.file.testzip())
        for entry in self.file.infolist():
            self.assertEqual((entry.compress_type, entry.date_time), (zipfile.ZIP_STORED, (1980, 1, 1, 0, 0, 0)))
        names = self.file.namelist()
        self.assertEqual(names, sorted(names))

    def test_python_writes_the_same_bytes_from_the_same_files(self):
        """The form is told well enough for another program to write it: core/record.md."""
        out = io.BytesIO()
        with zipfile.ZipFile(out, "w", zipfile.ZIP_STORED) as again:
            for name in self.file.namelist():
                entry = zipfile.ZipInfo(name, (1980, 1, 1, 0, 0, 0))
                entry.create_system, entry.create_version, entry.extract_version = 3, 30, 10
                entry.external_attr = 0o100644 << 16
                again.writestr(entry, self.file.read(name))
        written = bytearray(out.getvalue())
        # zipfile always says that 2.0 is needed to read it; ours says 1.0, which is enough for stored files.
        sample = SAMPLE.read_bytes()
        self.assertEqual(len(written), len(sample))
        differs = [at for at, (one, other) in enumerate(zip(written, sample)) if one != other]
        self.assertTrue(all((written[at], sample[at]) in ((20, 10), (20, 30)) for at in differs), differs[:10])


if __name__ == "__main__":
    unittest.main()
