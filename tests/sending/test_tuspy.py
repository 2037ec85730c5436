"""The office's upload side against tuspy (https://github.com/tus/tus-py-client), with checksums, over a wire that is cut."""

import base64
import hashlib
import io
import json
import pathlib
import random
import sys
import unittest
import urllib.request
from concurrent.futures import ThreadPoolExecutor

from tusclient.client import TusClient
from tusclient.exceptions import TusCommunicationError, TusUploadFailed

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent))
from cutting import CuttingWire  # noqa: E402
from offices import Office  # noqa: E402

FILES = 200
BYTES_MOST = 200_000
TRIES_MOST = 200


class Tuspy(unittest.TestCase):
    def send(self, wire, token, data):
        """Uploads until it is whole. The client's own retries go on where it was; a new try begins after them."""
        digest = hashlib.sha256(data).digest()
        headers = {"Authorization": f"Bearer {token}"}
        client = TusClient(f"http://127.0.0.1:{wire.port}/api/v1/photos", headers=headers)
        metadata = {"sha256": digest.hex(), "visit": "visit-1", "media": "image/jpeg"}
        url, last = None, None
        for _ in range(TRIES_MOST):
            try:
                uploader = client.uploader(
                    file_stream=io.BytesIO(data),
                    chunk_size=32_768,
                    url=url,
                    metadata=metadata,
                    retries=5,
                    retry_delay=0.01,
                    upload_checksum=True,
                )
                if url is None:
                    url = uploader.create_url()
                    uploader.set_url(url)
                    uploader.offset = 0
                uploader.upload()
                return digest
            except (TusCommunicationError, TusUploadFailed, OSError) as error:
                last = error
        self.fail(f"a file of {len(data)} bytes did not come whole in {TRIES_MOST} tries; the last: {last!r} at {url}")

    def test_every_file_comes_whole_over_a_wire_that_is_cut_and_its_receipt_is_true(self):
        draw = random.Random(5)
        files = [draw.randbytes(draw.randint(1, BYTES_MOST)) for _ in range(FILES)]
        with Office() as office:
            wire = CuttingWire(office.port, 3, 60_000)
            with ThreadPoolExecutor(4) as pool:
                digests = list(pool.map(lambda data: self.send(wire, office.token, data), files))
            wire.close()
            print(f"{wire.cuts} cuts in {wire.connections} connections")
            self.assertGreaterEqual(wire.cuts, 100)
            for data, digest in zip(files, digests, strict=True):
                self.assertEqual(self.receipt(office, digest), (True, digest))
                kept = office.folder / "photos" / digest.hex()[:2] / digest.hex()
                self.assertEqual(kept.read_bytes(), data)

    def receipt(self, office, digest):
        request = urllib.request.Request(
            f"{office.address}/api/v1/photos/{digest.hex()}/receipt", headers={"Authorization": f"Bearer {office.token}"}
        )
        with urllib.request.urlopen(request) as answer:
            told = json.load(answer)
        # RFC 9530's form, read here by hand.
        field = told["repr_digest"].removeprefix("sha-256=:").removesuffix(":")
        return told["safe"], base64.b64decode(field)


if __name__ == "__main__":
    unittest.main()
