#!/usr/bin/env python3
"""A photograph from file to stored, judged and previewed, against general-purpose peers that only make a preview of it.

    tests/bench/photographs.py PROGRAM OUT.json     PROGRAM is the release build of coilside-bench's `photographs`

How it is made fair. The same twelve-megapixel files, drawn here, in one run; each program takes all of them in one process,
so that its start counts once, and the rounds of all programs alternate, so that a busy machine is busy for all; the fastest
round of each counts. Peers write previews of the same size to the same disk. Prints ratios of wall time and of processor time
(which other work on the machine disturbs less), the previews' PSNR against a full decode with Lanczos, and the most memory
held; adds the ratios to OUT.json, and closes with `N passed, N failed`: one for each goal.
"""

import json
import os
import pathlib
import resource
import subprocess
import sys
import tempfile
import time

import numpy as np
from PIL import Image

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1] / "python"))
from photo_scenes import scene  # noqa: E402

ROUNDS = 7
SIDE = 1600
RATIO_GOAL = 0.6  # of vipsthumbnail's time
PSNR_LEAST_DB = 34.0
HELD_KB_MAX = 64_000_000 // 1024
PILLOW = """
import sys
from PIL import Image
for name in sys.argv[2:]:
    picture = Image.open(name)
    picture.draft("RGB", (1600, 1600))
    picture.thumbnail((1600, 1600), Image.Resampling.LANCZOS)
    picture.save(f"{sys.argv[1]}/pillow.jpg", quality=85)
"""


def children_s() -> float:
    """Processor time of all processes that have ended so far, seconds."""
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


def timed(command, **options):
    """Wall and processor seconds of a command, and what it wrote."""
    cpu, wall = children_s(), time.perf_counter()
    out = subprocess.run(command, capture_output=True, text=True, check=True, **options)
    return time.perf_counter() - wall, children_s() - cpu, out.stdout


def draw(folder: pathlib.Path) -> list[str]:
    """Six photographs as phones write them: 4:2:0 and 4:2:2, at several qualities."""
    names = []
    for seed, (quality, subsampling) in enumerate([(90, 2), (92, 1), (95, 2)] * 2):
        name = folder / f"{seed}.jpg"
        scene(seed + 1).save(name, quality=quality, subsampling=subsampling)
        names.append(str(name))
    return names


def psnr_db(preview: str, original: str) -> float:
    """Of a preview against the whole picture, reduced by Lanczos with three lobes in Pillow; all three colours."""
    ours = Image.open(preview).convert("RGB")
    whole = Image.open(original).convert("RGB").resize(ours.size, Image.Resampling.LANCZOS)
    error = np.asarray(ours, dtype=float) - np.asarray(whole, dtype=float)
    return 10 * np.log10(255**2 / np.mean(error**2))


def main(program: str, out: str) -> int:
    with tempfile.TemporaryDirectory(dir=pathlib.Path(out).resolve().parent) as folder:
        return measured(program, pathlib.Path(out), pathlib.Path(folder))


def measured(program: str, out: pathlib.Path, folder: pathlib.Path) -> int:
    names = draw(folder)
    size = os.path.getsize(names[0]) / 1e6
    print(f"{len(names)} files of 12 megapixels, the first {size:.1f} MB")

    def ours(round_):
        """Every round into a shelf of its own: what is kept already is not kept again."""
        return timed([program, str(folder / f"shelf-{round_}")], input="\n".join(names))

    def djpeg():
        parts = [timed(["djpeg", "-scale", "1/2", "-outfile", str(folder / "half.ppm"), name]) for name in names]
        return sum(part[0] for part in parts), sum(part[1] for part in parts), ""

    vips = ["vipsthumbnail", *names, "-s", str(SIDE), "-o", str(folder / "vips-%s.jpg[Q=85]")]
    programs = {
        "ours": ours,
        "vipsthumbnail": lambda _: timed(vips),
        "Pillow with draft": lambda _: timed([sys.executable, "-c", PILLOW, str(folder), *names]),
        "djpeg at half size, no preview": lambda _: djpeg(),
    }
    rounds = {name: [] for name in programs}
    for round_ in range(ROUNDS):
        for name, run in programs.items():
            rounds[name].append(run(round_))
    wall = {name: min(one[0] for one in took) * 1e3 / len(names) for name, took in rounds.items()}
    cpu = {name: min(one[1] for one in took) * 1e3 / len(names) for name, took in rounds.items()}
    told = [json.loads(line) for line in rounds["ours"][-1][2].splitlines()]
    psnr = [psnr_db(one["preview"], name) for one, name in zip(told, names, strict=True)]
    held = max(one["held_kb"] for one in told)

    rows = []
    print(f"{'':32} {'wall ms':>8} {'cpu ms':>8}  ours/it: {'wall':>6} {'cpu':>6}")
    for name in programs:
        ratios = wall["ours"] / wall[name], cpu["ours"] / cpu[name]
        print(f"{name:32} {wall[name]:8.1f} {cpu[name]:8.1f}           {ratios[0]:6.3f} {ratios[1]:6.3f}")
        if name != "ours":
            rows.append(
                {
                    "name": "a 12-megapixel photograph, file to stored, judged and previewed",
                    "ours": round(wall["ours"], 2),
                    "peer": round(wall[name], 2),
                    "peer_name": name,
                    "unit": "ms a photograph",
                    "ratio": round(ratios[0], 4),
                    "goal": RATIO_GOAL if name == "vipsthumbnail" else None,
                }
            )
    print(f"PSNR against a full decode with Lanczos: least {min(psnr):.2f} dB of {len(psnr)}")
    print(f"most memory held: {held} kB")
    known = json.loads(out.read_text(encoding="utf-8")) if out.exists() else []
    known = [row for row in known if row["name"] != rows[0]["name"]]
    out.write_text(json.dumps(known + rows, indent=1, ensure_ascii=False) + "\n", encoding="utf-8")
    goals = [
        ("ratio to vipsthumbnail", rows[0]["ratio"] <= RATIO_GOAL),
        ("PSNR", min(psnr) >= PSNR_LEAST_DB),
        ("memory", held <= HELD_KB_MAX),
    ]
    for name, met in goals:
        print(f"{'ok' if met else 'MISSED'}: {name}")
    missed = sum(not met for _, met in goals)
    print(f"{len(goals) - missed} passed, {missed} failed")
    return 1 if missed else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
