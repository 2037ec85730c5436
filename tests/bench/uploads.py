#!/usr/bin/env python3
"""Photographs to the office, against tusd (https://github.com/tus/tusd), the reference server of tus 1.0.

    tests/bench/uploads.py COILSIDE TUSD OUT.json     COILSIDE is the release build, TUSD the program tusd

How it is made fair. Both get the same hundred files of 3 MB over loopback from the same client (tus-js-client), one and four
at once, in rounds that alternate, by turns the one and the other first, each into an empty folder of the same disk. A rate is
all files of all rounds over all their seconds: where the machine has neighbours a round takes a third longer or less, which
leaves the fastest of a few, or the one in the middle, to luck. It is not made equal: the office hashes each file, and its clock
runs until the last of them have their receipts, which they get after all files, folders and rows are on the disk; tusd hashes
nothing and waits for no disk.
Memory is the most that was resident (VmHWM), over all rounds. Adds ratios to OUT.json, smaller is better for us, and closes
with `N passed, N failed`: one for each goal.
"""

import json
import os
import pathlib
import random
import re
import shutil
import statistics
import subprocess
import sys
import tempfile
import time

FILES = 100
FILE_BYTES = 3_000_000
ROUNDS = 25
RATIO_GOAL = 1.0
MEMORY_GOAL = 0.5
CLIENT = pathlib.Path(__file__).with_name("uploads.mjs")


class Server:
    """A server on an empty folder."""

    def __init__(self, folder: pathlib.Path):
        self.folder = folder
        self.token = []
        self.process = None

    def __enter__(self):
        shutil.rmtree(self.folder, ignore_errors=True)
        self.folder.mkdir()
        self.start()
        return self

    def __exit__(self, *_):
        self.process.terminate()
        self.process.wait()
        self.process.stdout.close()
        shutil.rmtree(self.folder, ignore_errors=True)

    def resident_kb(self) -> int:
        """The most memory that it held so far."""
        status = pathlib.Path(f"/proc/{self.process.pid}/status").read_text(encoding="ascii")
        return int(re.search(r"VmHWM:\s+(\d+) kB", status)[1])

    def wait_for(self, pattern: str) -> str:
        """Reads on until a line tells where it listens."""
        for line in self.process.stdout:
            if found := re.search(pattern, line):
                return found[1]
        raise SystemExit(f"{self.name} ended before it listened")


class Coilside(Server):
    name = "coilside office"

    def __init__(self, program: str, folder: pathlib.Path):
        super().__init__(folder)
        self.program = program

    def start(self):
        office = [self.program, "office", "--folder", str(self.folder)]
        made = subprocess.run([*office, "--new-device", "bench"], capture_output=True, text=True, check=True)
        self.token = [made.stdout.strip()]
        self.process = subprocess.Popen([*office, "--port", "0"], stdout=subprocess.PIPE, text=True)
        self.endpoint = self.wait_for(r"(http://127\.0\.0\.1:\d+)") + "/api/v1/photos"


class Tusd(Server):
    name = "tusd"

    def __init__(self, program: str, folder: pathlib.Path):
        super().__init__(folder)
        self.program = program

    def start(self):
        command = [self.program, "-host", "127.0.0.1", "-port", "0", "-upload-dir", str(self.folder)]
        self.process = subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True)
        self.endpoint = self.wait_for(r"upload files to: (http://\S+)")


def measured(server: Server, at_once: int, files: pathlib.Path) -> tuple[float, int]:
    """Seconds for all files, and the memory that the server held."""
    with server:
        command = ["node", str(CLIENT), server.endpoint, str(at_once), str(files), *server.token]
        # Nothing reads what else it prints; a full pipe must not stop it.
        drain = subprocess.Popen(["cat"], stdin=server.process.stdout, stdout=subprocess.DEVNULL)
        told = json.loads(subprocess.run(command, capture_output=True, text=True, check=True).stdout)
        held = server.resident_kb()
        drain.terminate()
        drain.wait()
    if told["files"] != FILES:
        raise SystemExit(f"{told['files']} files were sent instead of {FILES}")
    return told["seconds"], held


def main(coilside: str, tusd: str, out: str) -> int:
    with tempfile.TemporaryDirectory(dir=pathlib.Path(out).resolve().parent) as folder:
        folder = pathlib.Path(folder)
        files = folder / "files"
        files.mkdir()
        draw = random.Random(3)
        for number in range(FILES):
            (files / f"{number}.jpg").write_bytes(draw.randbytes(FILE_BYTES))
        servers = [Coilside(coilside, folder / "ours"), Tusd(tusd, folder / "tusd")]
        took = {(server.name, at_once): [] for server in servers for at_once in (1, 4)}
        for _ in range(ROUNDS):
            servers.reverse()
            for at_once in (1, 4):
                for server in servers:
                    # What the round before left to be written is not this one's.
                    os.sync()
                    time.sleep(0.5)
                    took[server.name, at_once].append(measured(server, at_once, files))
    return told(took, pathlib.Path(out))


def shown(rounds: list[float]) -> str:
    return " ".join(f"{one:.1f}" for one in rounds)


def told(took, out: pathlib.Path) -> int:
    """Prints ratios and adds them to the list."""
    rows = []
    print(f"{'':40} {'ours':>9} {'tusd':>9}  {'ratio':>6} {'goal':>5}")

    def row(name, mine, theirs, unit, goal):
        ratio = mine / theirs
        verdict = "" if ratio <= goal else "   MISSED"
        print(f"{name:40} {mine:9.3f} {theirs:9.3f}  {ratio:6.3f} {goal:5.2f}   {unit}{verdict}")
        rows.append(
            {
                "name": name,
                "ours": round(mine, 4),
                "peer": round(theirs, 4),
                "peer_name": "tusd",
                "unit": unit,
                "ratio": round(ratio, 4),
                "goal": goal,
            }
        )

    for at_once in (1, 4):
        rounds = [sorted(s / FILES * 1e3 for s, _ in took[name, at_once]) for name in ("coilside office", "tusd")]
        mine, theirs = map(statistics.fmean, rounds)
        print(f"{at_once} at once: ours {1e3 / mine:.0f} files a second, tusd {1e3 / theirs:.0f}")
        print(f"  ms a file, all rounds: ours {shown(rounds[0])}; tusd {shown(rounds[1])}")
        row(f"a photograph of 3 MB, {at_once} at once", mine, theirs, "ms a file", RATIO_GOAL)
    mine, theirs = (
        max(kb for at_once in (1, 4) for _, kb in took[name, at_once]) / 1024 for name in ("coilside office", "tusd")
    )
    row("memory of the server", mine, theirs, "MiB resident at most", MEMORY_GOAL)
    known = json.loads(out.read_text(encoding="utf-8")) if out.exists() else []
    names = {one["name"] for one in rows}
    known = [one for one in known if one["name"] not in names]
    out.write_text(json.dumps(known + rows, indent=1, ensure_ascii=False) + "\n", encoding="utf-8")
    missed = sum(one["ratio"] > one["goal"] for one in rows)
    print(f"{len(rows) - missed} passed, {missed} failed")
    return 1 if missed else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
