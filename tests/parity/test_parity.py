"""Every block kind, every action that shells make themselves, every request and outcome is handled by all three shells.

The table of it stands in ARCHITECTURE.md's appendix; UPDATE_PARITY=1 writes it anew.
"""

import os
import re
import unittest
from pathlib import Path

from sources import ENUMS, ROOT, SHELLS, handlers, made_by_shells, shell, variants, where, without_comments

TITLES = {
    "Block": "block kind",
    "Action": "action that a shell makes itself",
    "Request": "request",
    "Outcome": "outcome",
}
HEADING = "## Appendix: what each shell handles"


class Parity(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.shells = {name: shell(name) for name in SHELLS}

    def names(self, kind: str) -> list[str]:
        return made_by_shells() if kind == "Action" else variants(kind)

    def test_every_kind_is_handled_by_all_three_shells(self):
        for kind in ENUMS:
            for name in self.names(kind):
                for which, files in self.shells.items():
                    with self.subTest(kind=kind, name=name, shell=which):
                        self.assertTrue(where(kind, name, which, files), f"{which} does not handle {kind}::{name}")

    def test_no_shell_makes_an_action_that_the_others_do_not_make(self):
        """What a button carries is sent back as it is; only what is typed and chosen is put together by a shell."""
        made = set(made_by_shells())
        self.assertEqual(made, {"Draft", "Enter", "Choose"}, "blocks name other actions than before")
        for name in set(variants("Action")) - made:
            for which, files in self.shells.items():
                with self.subTest(name=name, shell=which):
                    self.assertEqual(where("Action", name, which, files), [], f"{which} makes Action::{name} itself")

    def test_no_shell_leaves_a_kind_to_a_default(self):
        ios = self.shells["iOS"]
        for file, of in [("Blocks/BlockList.swift", "switch block"), ("Effects/EffectRunner.swift", "switch effect.request")]:
            [text] = [text for name, text in ios.items() if name.endswith(file)]
            self.assertIn(of, text)
            self.assertNotIn("default:", text, file)
        [android] = [text for name, text in self.shells["Android"].items() if name.endswith("/BlockList.kt")]
        drawn = android[android.index("fun viewOf") :]
        self.assertNotIn("else ->", drawn[: drawn.index("\n        }")])

    def test_the_table_of_the_appendix_is_the_table_of_the_sources(self):
        file = ROOT / "ARCHITECTURE.md"
        text = file.read_text(encoding="utf-8")
        wanted = f"{HEADING}\n\n{self.table()}"
        before = text.split(HEADING)[0].rstrip("\n")
        if os.environ.get("UPDATE_PARITY"):
            file.write_text(f"{before}\n\n{wanted}", encoding="utf-8")
        self.assertIn(wanted, file.read_text(encoding="utf-8"), "run it with UPDATE_PARITY=1, and look at what changed")

    def table(self) -> str:
        lines = ["Made by `tests/parity` from the sources: where each shell handles what the core can say.", ""]
        for kind in ENUMS:
            lines += [f"| {TITLES[kind]} | {' | '.join(SHELLS)} |", "| --- " * 4 + "|"]
            for name in self.names(kind):
                cells = []
                for which, files in self.shells.items():
                    found = where(kind, name, which, files)
                    cells.append(", ".join(f"`{Path(each).name}`" for each in found) or "**missing**")
                lines.append(f"| `{name}` | {' | '.join(cells)} |")
            lines.append("")
        return "\n".join(lines).rstrip("\n") + "\n"


class Patterns(unittest.TestCase):
    """The test itself sees when something is missing."""

    def test_a_kind_that_only_a_comment_names_is_not_handled(self):
        self.assertNotRegex(without_comments("// case 'text': return text(block);"), handlers("Block", "Text")["browser"])
        self.assertIn("https://a.example", without_comments('let url = "https://a.example" // x'))

    def test_a_kind_whose_handler_is_taken_out_is_missing(self):
        for kind, name, which in [("Block", "Ink", "browser"), ("Block", "Ink", "iOS"), ("Request", "Locate", "iOS"), ("Outcome", "Woken", "iOS")]:
            files = shell(which)
            pattern = re.compile(handlers(kind, name)[which], re.M)
            self.assertTrue(where(kind, name, which, files))
            without = {file: pattern.sub("", text) for file, text in files.items()}
            self.assertEqual(where(kind, name, which, without), [], f"{which} {name}")


if __name__ == "__main__":
    unittest.main()
