"""The pack checker against a second model of its own words (`pack_model.py`): the same verdict on every built-in pack and on every
pack that was broken on purpose, with the same steps at fault and the same number of states and ways between them.

The broken packs come as JSON from `core/examples/packs_for_python.rs`; the built-in ones are read from their `pack.toml`.
"""

import json
import subprocess
import tempfile
import tomllib
import unittest
from pathlib import Path

from pack_model import Model, every_combination

ROOT = Path(__file__).resolve().parents[2]
KINDS = {"unguarded", "outside", "answer", "trap", "left", "away", "dead"}


def faults_of(proof):
    """The checker's faults as kind and step, as the model tells them."""
    if proof["verdict"] == "proved":
        return set()
    found = set()
    for example in proof["verdict"]["refused"]:
        fault = example["fault"]
        kind = fault["fault"]
        found.add((kind, fault["condition"] if kind == "answer" else fault["step"] if kind in ("unguarded", "outside", "dead") else ""))
    return found


def sizes_of(proof):
    return {space: (proof[space]["states"], proof[space]["transitions"]) for space in ("straight", "mended") if proof[space]}


class PackModel(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.folder = tempfile.TemporaryDirectory()
        cls.addClassCleanup(cls.folder.cleanup)
        # Built with everything else by tests/run.
        subprocess.run([str(ROOT / "target/debug/examples/packs_for_python"), cls.folder.name], check=True)
        cls.told = {path.stem: json.loads(path.read_text()) for path in sorted(Path(cls.folder.name).glob("*.json"))}

    def compare(self, name, pack, proof):
        model = Model(pack)
        faults, sizes = model.verdict()
        self.assertEqual(proof["starts"], model.starts, name)
        self.assertEqual(proof["starts"], len(every_combination(model)), name)
        self.assertLessEqual({kind for kind, _ in faults}, KINDS)
        self.assertEqual(faults_of(proof), faults, name)
        self.assertEqual(sizes_of(proof), sizes, name)

    def test_both_prove_every_built_in_pack(self):
        files = sorted((ROOT / "core/packs").glob("*/pack.toml"))
        names = {name for name in self.told if name.startswith("built-in.")}
        self.assertEqual({f"built-in.{file.parent.name}" for file in files}, names)
        for file in files:
            with self.subTest(file.parent.name):
                told = self.told[f"built-in.{file.parent.name}"]
                self.assertEqual("proved", told["proof"]["verdict"])
                self.compare(file.parent.name, tomllib.loads(file.read_text()), told["proof"])

    def test_both_refuse_every_broken_pack_for_the_same_steps(self):
        broken = {name: told for name, told in self.told.items() if name.startswith("broken.")}
        self.assertGreaterEqual(len(broken), 30)
        for name, told in broken.items():
            with self.subTest(name):
                self.assertNotEqual("proved", told["proof"]["verdict"])
                self.compare(name, told["pack"], told["proof"])


if __name__ == "__main__":
    unittest.main()
