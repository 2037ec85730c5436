"""A short visit through the Python binding: the same door that the phones use, and a seal that a stock library checks."""

import base64
import hashlib
import io
import json
import os
import tempfile
import unittest
import zipfile

import rfc8785
from cryptography.hazmat.primitives import hashes, serialization
from cryptography.hazmat.primitives.asymmetric import ec
from jwcrypto import jwk, jws
from PIL import Image

import coilside

ASSIGNMENT = {
    "id": "a1",
    "due": "2026-05-04",
    "reason": "Yearly service",
    "site": {
        "name": "Mill house",
        "address": "1 Mill Lane, Lower Weir",
        "latitude_deg": 1.5,
        "longitude_deg": 2.5,
        "note": "",
    },
    "owner": {"name": "A. Weaver", "phone": "555 0100", "language": "en"},
    "units": [
        {
            "letter": "A",
            "unit": "U-1",
            "maker": "Invented",
            "model": "Model One",
            "serial": "AB-1042",
            "pack": "add-on-water-heater",
        }
    ],
}


def photograph():
    """A small JPEG by an encoder that is not ours."""
    picture = Image.effect_mandelbrot((160, 120), (-2, -1.5, 1, 1.5), 60).convert("RGB")
    into = io.BytesIO()
    picture.save(into, "JPEG", quality=85)
    return into.getvalue()


class ShortVisit(unittest.TestCase):
    def setUp(self):
        self.folder = tempfile.TemporaryDirectory()
        self.key = ec.generate_private_key(ec.SECP256R1())
        self.public = self.key.public_key().public_bytes(
            serialization.Encoding.X962, serialization.PublicFormat.UncompressedPoint
        )
        self.clock_ms = 1_777_881_600_000
        self.acted = 0
        self.door = coilside.Door.open(
            coilside.DoorSetup(
                folder=self.folder.name, entropy=os.urandom(32), now=self.now(), language="en", public_key=self.public
            )
        )

    def tearDown(self):
        self.folder.cleanup()

    def now(self):
        return coilside.Now(utc_ms=self.clock_ms, offset_min=120, mono_ms=self.clock_ms, mono_epoch="python")

    def act(self, action):
        self.clock_ms += 5_000
        self.acted += 1
        return self.door.act(f"act-{self.acted}", action, self.now())

    def test_a_short_visit_is_broken_off_sealed_and_checked_by_stock_libraries(self):
        self.door.assigned(json.dumps([ASSIGNMENT]))
        turn = self.act(coilside.Action.START_VISIT(assignment="a1"))
        self.assertEqual(turn.screen.unit, "A")
        [locate] = turn.effects
        self.door.done(locate.id, coilside.Outcome.FAILED(why="no place here"), self.now())

        bytes_taken = photograph()
        turn = self.act(coilside.Action.SHOOT(slot="casing-before"))
        [take] = turn.effects
        with open(self.door.incoming_path(take.id), "wb") as incoming:
            incoming.write(bytes_taken)
        self.door.done(take.id, coilside.Outcome.PHOTO(place=None), self.now())
        digest = hashlib.sha256(bytes_taken).hexdigest()
        with open(os.path.join(self.folder.name, "originals", digest), "rb") as original:
            self.assertEqual(original.read(), bytes_taken)

        self.act(coilside.Action.ENTER(field="read:air-on-found", text="18,5"))
        refused = self.act(coilside.Action.DONE(step="add-acid")).screen
        [notice] = [notice for notice in refused.notices if notice.title.startswith("Not yet: ")]
        self.assertTrue(notice.lines, "the refusal says what comes first")

        self.act(coilside.Action.DRAFT(field="break-off", text="Storm coming"))
        self.act(coilside.Action.BREAK_OFF())
        turn = self.act(coilside.Action.SEAL())
        [sign] = turn.effects
        signing_input = base64.b64decode(sign.request.bytes_base64)
        signature = self.key.sign(signing_input, ec.ECDSA(hashes.SHA256()))
        turn = self.door.done(
            sign.id, coilside.Outcome.SIGNATURE(base64=base64.b64encode(signature).decode()), self.now()
        )
        self.assertEqual(turn.screen.title, "The record is sealed")

        self.check_events(digest)
        self.check_seal()
        self.check_record(bytes_taken)

    def check_events(self, digest):
        """The chain by hashlib, the canonical form by rfc8785 (PyPI, an independent RFC 8785 library)."""
        events = self.door.events(self.door.current_visit())
        prev = "0" * 64
        for seq, text in enumerate(events):
            event = json.loads(text)
            self.assertEqual(rfc8785.dumps(event).decode(), text)
            self.assertEqual((event["seq"], event["prev"]), (seq, prev))
            prev = hashlib.sha256(text.encode()).hexdigest()
        kinds = [json.loads(text)["kind"] for text in events]
        self.assertEqual(kinds[:2], ["visit-opened", "run-started"])
        self.assertEqual(kinds[-2:], ["broken-off", "seal-prepared"])
        self.assertNotIn("step-done", kinds, "what was refused is not in the log")
        [photo] = [json.loads(text) for text in events if json.loads(text)["kind"] == "photo-taken"]
        self.assertEqual(photo["digest"], digest)
        [reading] = [json.loads(text) for text in events if json.loads(text)["kind"] == "reading-taken"]
        self.assertEqual((reading["value"], reading["in"], reading["typed"]), ("18.5", "Cel", "18,5"))
        self.last = prev
        self.count = len(events)

    def check_record(self, photograph_taken):
        """The device's own record file, by Python's zipfile: what the README tells is tried in test_record_file.py."""
        visit, path = self.door.current_visit(), os.path.join(self.folder.name, "record.zip")
        for personal in (True, False):
            self.door.write_record(visit, personal, path)
            with zipfile.ZipFile(path) as file:
                self.assertIsNone(file.testzip())
                names = file.namelist()
                record = json.loads(file.read("record.json"))
                self.assertEqual(record["events"], self.door.events(visit))
                self.assertEqual((len(record["seals"]), record["offices"]), (1, []))
                [name] = [name for name in names if name.startswith("photographs/")]
                self.assertEqual(file.read(name), photograph_taken)
                self.assertEqual("personal.json" in names, personal)
                if personal:
                    data = json.loads(file.read("personal.json"))
                    digest = hashlib.sha256((data["salt"] + data["personal"]).encode()).hexdigest()
                    self.assertEqual(digest, json.loads(record["events"][0])["personal"])
                    self.assertIn("A. Weaver", data["personal"])

    def check_seal(self):
        """The JWS by jwcrypto (PyPI, an independent JOSE library) and the public key alone."""
        network = coilside.Network(link=coilside.Link.UNMETERED, window_ms=None, office=True)
        kind = [coilside.Header(name="Content-Type", value="application/json")]
        for _ in range(40):
            self.clock_ms += 60_000
            requests = self.door.next_requests(network, self.now())
            # One small thing at a time, and the seal comes before any photograph.
            self.assertEqual(len(requests), 1)
            [request] = requests
            if request.path.endswith("/seal"):
                break
            self.door.answered(request.id, 200, kind, self.answer_to(request), self.now())
        token = json.loads(bytes(request.body))["jws"]
        public = jwk.JWK.from_pem(
            self.key.public_key().public_bytes(
                serialization.Encoding.PEM, serialization.PublicFormat.SubjectPublicKeyInfo
            )
        )
        signed = jws.JWS()
        signed.deserialize(token, public)
        payload = json.loads(signed.payload)
        self.assertEqual(rfc8785.dumps(payload), signed.payload)
        self.assertEqual((payload["last"], payload["next"], payload["complete"]), (self.last, self.count, False))

    def answer_to(self, request):
        """What an office would answer: it knows the device, and has the events on its disk."""
        if request.path.endswith("/device"):
            return b'{"known": true}'
        if request.path.endswith("/assignments"):
            return b'{"assignments": []}'
        body = json.loads(bytes(request.body))
        head = hashlib.sha256(body["events"][-1].encode()).hexdigest()
        return json.dumps({"next": body["first"] + len(body["events"]), "head": head}).encode()


if __name__ == "__main__":
    unittest.main()
