"""What the core can say, and what the sources of the three shells do with it."""

import re
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
CORE = ROOT / "core/src"

# A shell's sources: where they lie and how they end. The browser's are its page and the process that is its door.
SHELLS = {
    "browser": [("web/page", ".js"), ("web/src", ".rs")],
    "Android": [("android/src/main", ".kt")],
    "iOS": [("ios/Sources/CoilsideKit", ".swift"), ("ios/Sources/CoilsideApp", ".swift")],
}


def without_comments(text: str) -> str:
    """Code alone: what a comment names is not handled. Addresses in texts, `https://`, stay."""
    text = re.sub(r"/\*.*?\*/", "", text, flags=re.S)
    return re.sub(r"(?<!:)//.*", "", text)


class Missing(Exception):
    """A shell is not there."""


def shell(name: str) -> dict[str, str]:
    """Its files by their path from the root, without comments."""
    files = {}
    for folder, ending in SHELLS[name]:
        if not (ROOT / folder).is_dir():
            raise Missing(f"{name}: there is no {folder}")
        for file in sorted((ROOT / folder).rglob(f"*{ending}")):
            # Behind its tests a Rust file handles nothing any more.
            text = file.read_text(encoding="utf-8").split("\n#[cfg(test)]")[0]
            files[str(file.relative_to(ROOT))] = without_comments(text)
    return files


# Where the core's enums are.
ENUMS = {"Block": "screen/block.rs", "Action": "action.rs", "Request": "effect.rs", "Outcome": "effect.rs"}


def fields(enum: str) -> dict[str, str]:
    """The variants of an enum of the core, in order, each with its first field's name; none where it has no field."""
    text = without_comments((CORE / ENUMS[enum]).read_text(encoding="utf-8"))
    body = re.search(rf"pub enum {enum} \{{\n(.*?)\n\}}", text, re.S)
    assert body, f"there is no enum {enum} in {ENUMS[enum]}"
    return dict(re.findall(r"^    ([A-Z]\w*)(?: \{\s*(\w+):)?", body[1], re.M))


def variants(enum: str) -> list[str]:
    """Their names."""
    return list(fields(enum))


def made_in_swift(enum: str, name: str) -> str:
    """The pattern of Swift that makes a value, by its first label: a pattern that takes one apart has none."""
    label = fields(enum)[name]
    return rf"\.{camel(name)}\({label}:" if label else rf"\.{camel(name)}\)"


def kebab(name: str) -> str:
    """`TextEntry` as the browser reads it: `text-entry`."""
    return re.sub(r"(?<=[a-z])(?=[A-Z])", "-", name).lower()


def camel(name: str) -> str:
    """`TextEntry` as Swift has it: `textEntry`."""
    return name[0].lower() + name[1:]


def made_by_shells() -> list[str]:
    """The actions that blocks name in their words: a shell makes these itself. All others come ready made, in a button."""
    lines = (CORE / "screen/block.rs").read_text(encoding="utf-8").splitlines()
    words = " ".join(line.strip() for line in lines if line.strip().startswith("///"))
    named = set(re.findall(r"`([A-Z]\w*)(?:\{[^`]*\})?`", words))
    return [action for action in variants("Action") if action in named - {"Confirm"}]


def handlers(kind: str, name: str) -> dict[str, str]:
    """For each shell the pattern of the code that handles `name` of the core's enum `kind`."""
    plain, swift = re.escape(kebab(name)), camel(name)
    if kind == "Block":
        return {
            "browser": rf"case '{plain}': return .*\(block",
            "Android": rf"is Block\.{name} -> \w+\(ui\)",
            "iOS": rf"^        case \.{swift}(?:\(.*\))?:$",
        }
    if kind == "Action":
        return {
            "browser": rf"\bdo: '{plain}'",
            "Android": rf"\bAction\.{name}\b\(",
            "iOS": made_in_swift("Action", name),
        }
    if kind == "Request":
        return {
            "browser": rf"request\.ask === '{plain}'|\bRequest::{name}\b",
            "Android": rf"\b(?:is|as\?) Request\.{name}\b",
            "iOS": rf"^        case \.{swift}(?:\(.*\))?:$",
        }
    return {
        "browser": rf"\boutcome: '{plain}'|\bOutcome::{name}\b",
        "Android": rf"\bOutcome\.{name}\b",
        "iOS": made_in_swift("Outcome", name),
    }


def where(kind: str, name: str, which: str, files: dict[str, str]) -> list[str]:
    """The files of a shell that handle it."""
    pattern = re.compile(handlers(kind, name)[which], re.M)
    only = {"Request": "Effects/", "Outcome": "Effects/"}.get(kind, "") if which == "iOS" else ""
    return [file for file, text in files.items() if only in file and pattern.search(text)]
