"""Starts the program's office in a folder of its own."""

import os
import pathlib
import re
import subprocess
import tempfile

PROGRAM = os.environ.get("COILSIDE_BIN", str(pathlib.Path(__file__).resolve().parents[2] / "target/debug/coilside"))


class Office:
    """A running office; `token` is a device's."""

    def __init__(self, program: str = PROGRAM):
        self._folder = tempfile.TemporaryDirectory(prefix="coilside-office-")
        self.folder = pathlib.Path(self._folder.name)
        common = [program, "office", "--folder", str(self.folder)]
        made = subprocess.run([*common, "--new-device", "a script"], capture_output=True, text=True, check=True)
        self.token = made.stdout.strip()
        self.process = subprocess.Popen([*common, "--port", "0"], stdout=subprocess.PIPE, text=True)
        address = re.search(r"http://127\.0\.0\.1:(\d+)", self.process.stdout.readline())
        if not address:
            raise RuntimeError("the office did not tell its address")
        self.port = int(address[1])
        self.address = address[0]

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self.process.kill()
        self.process.wait()
        self.process.stdout.close()
        self._folder.cleanup()
