"""The office's description (OpenAPI) drives schemathesis (https://schemathesis.io) against a running office: whatever it makes
up, the office answers as it says, in the shapes that it says, and never with a failure of its own."""

import os
import pathlib
import re
import subprocess
import sys
import unittest

HERE = pathlib.Path(__file__).resolve().parent
sys.path.insert(0, str(HERE))
from offices import Office  # noqa: E402

SECONDS_MOST = 60
CHECKS = [
    "not_a_server_error",
    "status_code_conformance",
    "content_type_conformance",
    "response_headers_conformance",
    "response_schema_conformance",
    "ignored_auth",
]
CASES_LEAST = 300


class Description(unittest.TestCase):
    def test_whatever_is_made_up_from_the_description_is_answered_as_it_says(self):
        program = pathlib.Path(sys.executable).with_name("schemathesis")
        with Office() as office:
            command = [
                *(str(program), "--no-color", "run", f"{office.address}/api/v1/openapi.json"),
                *("-H", f"Authorization: Bearer {office.token}"),
                *("--checks", ",".join(CHECKS)),
                *("--phases", "examples,coverage,fuzzing", "--max-examples", "60"),
                *("--max-time", str(SECONDS_MOST), "--seed", "1", "--generation-database", "none"),
                *("--warnings", "off", "--continue-on-failure"),
            ]
            hooks = {**os.environ, "SCHEMATHESIS_HOOKS": "pieces", "PYTHONPATH": str(HERE)}
            ran = subprocess.run(
                command, capture_output=True, text=True, timeout=SECONDS_MOST * 4, check=False, env=hooks, cwd=office.folder
            )
            # The office is still there, and sound.
            self.assertIsNone(office.process.poll())
        print(ran.stdout[-6000:], ran.stderr[-2000:])
        self.assertEqual(ran.returncode, 0)
        cases = re.search(r"(\d+) generated", ran.stdout)
        self.assertIsNotNone(cases, "it does not tell how many cases it made")
        self.assertGreaterEqual(int(cases[1]), CASES_LEAST)


if __name__ == "__main__":
    unittest.main()
