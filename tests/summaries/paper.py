"""The summaries of target/summaries as papers, checked from outside: veraPDF and qpdf on the files, pdftotext on their words and
their layout, and published formulas on how hard the words are to read."""

import json
import os
import re
import subprocess
import unittest
import xml.etree.ElementTree as ElementTree
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
FOLDER = ROOT / "target" / "summaries"
PAPERS = sorted(FOLDER.glob("*.pdf"))
VERAPDF = os.environ.get("COILSIDE_VERAPDF", str(ROOT / "target" / "verapdf" / "lib" / "*"))
PAGE_NUMBER = re.compile(r"^(Page|Página) \d+ (of|de) \d+\s*$", re.MULTILINE)


def told(paper: Path) -> dict:
    return json.loads(paper.with_suffix(".json").read_text())


def run(*command: str) -> str:
    done = subprocess.run(command, capture_output=True, text=True, errors="replace", check=False)
    if done.returncode != 0:
        raise AssertionError(f"{' '.join(command)}: {done.returncode}\n{done.stdout}\n{done.stderr}")
    return done.stdout


def squeezed(text: str) -> str:
    return "".join(text.replace("\u2011", "-").split())


class Papers(unittest.TestCase):
    def test_there_are_ten(self):
        self.assertEqual(len(PAPERS), 10)

    def test_verapdf_finds_every_paper_to_be_pdf_a_2a(self):
        """veraPDF 1.28.2 against ISO 19005-2, level A: the machine's part of 'readable in decades' and of 'tagged'."""
        files = [str(paper) for paper in PAPERS]
        report = subprocess.run(
            ["java", "-cp", VERAPDF, "org.verapdf.apps.GreenfieldCliWrapper", "-f", "2a", "--format", "xml", *files],
            capture_output=True, text=True, check=False,
        ).stdout
        jobs = ElementTree.fromstring(report).findall(".//job")
        self.assertEqual(len(jobs), len(files))
        for job in jobs:
            verdict = job.find("validationReport")
            self.assertIsNotNone(verdict, ElementTree.tostring(job))
            rules = [
                f"{rule.get('clause')}: {rule.findtext('description')}" for rule in verdict.findall(".//rule[@status='failed']")
            ]
            self.assertEqual((verdict.get("isCompliant"), rules), ("true", []), job.findtext("item/name"))

    def test_qpdf_finds_no_fault_in_their_syntax(self):
        for paper in PAPERS:
            self.assertIn("No syntax or stream encoding errors", run("qpdf", "--check", str(paper)))

    def test_each_has_title_language_and_tags(self):
        for paper in PAPERS:
            said = run("pdfinfo", str(paper))
            self.assertRegex(said, r"Tagged: +yes")
            title = re.search(r"Title: +(.*)", said).group(1)
            self.assertEqual(title, told(paper)["words"][0])
            self.assertIn(f'/Lang ({told(paper)["language"]})', run("qpdf", "--qdf", "--object-streams=disable", str(paper), "-").replace("\x00", ""))

    def test_their_text_is_the_words_of_the_model_no_more_and_no_less(self):
        for paper in PAPERS:
            text = PAGE_NUMBER.sub("", run("pdftotext", "-raw", "-nopgbrk", "-enc", "UTF-8", str(paper), "-"))
            self.assertEqual(squeezed(text), squeezed("".join(told(paper)["words"])), paper.name)

    def test_no_word_reaches_over_the_edge_and_no_heading_ends_a_page(self):
        for paper in PAPERS:
            titles = set(headings(paper))
            self.assertGreater(len(titles), 4, paper.name)
            tree = ElementTree.fromstring(re.sub(' xmlns="[^"]+"', "", run("pdftotext", "-bbox-layout", str(paper), "-")))
            for number, page in enumerate(tree.findall(".//page"), 1):
                width, height = float(page.get("width")), float(page.get("height"))
                for word in page.findall(".//word"):
                    right, low = float(word.get("xMax")), float(word.get("yMax"))
                    self.assertLess(right, width - 30, f"{paper.name} {number}: {word.text}")
                    self.assertLess(low, height - 30, f"{paper.name} {number}: {word.text}")
                lines = [
                    (float(line.get("yMin")), " ".join(word.text for word in line.findall("word"))) for line in page.findall(".//line")
                ]
                body = sorted(line for line in lines if not PAGE_NUMBER.match(line[1]))
                self.assertTrue(body, f"{paper.name} {number} is empty")
                self.assertNotIn(body[-1][1], titles, f"{paper.name}: a heading ends page {number}")


def headings(paper: Path) -> list[str]:
    """What the paper's own tags call headings of the second level."""
    raw = run("pdfinfo", "-struct-text", str(paper))
    found, inside = [], False
    for line in raw.splitlines():
        if re.match(r"\s*H2", line):
            inside = True
        elif inside and (said := re.search(r'"(.*)"', line)):
            found.append(said.group(1).strip())
            inside = False
    return found


VOWELS = re.compile(r"[aeiouy]+")


def sentences_and_words(paper: Path) -> tuple[list[str], list[str]]:
    """Running text only: what ends in a full stop or question mark. Numbers, marks and machines are not read as words."""
    text = " ".join(line for line in told(paper)["words"] if re.search(r"[.!?]$", line) and len(line.split()) > 2)
    sentences = [part for part in re.split(r"(?<=[.!?:])\s+", text) if re.search(r"[^\W\d]", part)]
    return sentences, re.findall(r"[^\W\d_]+", text)


class Readable(unittest.TestCase):
    def test_english_is_read_at_the_age_of_twelve(self):
        """Flesch-Kincaid grade level by textstat (Kincaid et al. 1975, Naval Technical Training Command, Research Branch
        Report 8-75). Age 12 sits in grades 6 and 7 (age less five, the usual reading of a US grade)."""
        import textstat

        for paper in PAPERS:
            if told(paper)["language"] != "en":
                continue
            sentences, _ = sentences_and_words(paper)
            grade = textstat.textstat.flesch_kincaid_grade(" ".join(sentences))
            print(f"{paper.name}: Flesch-Kincaid grade {grade:.1f}")
            self.assertLessEqual(grade, 7.0, paper.name)

    def test_spanish_is_easy_for_most_people(self):
        """Fernández Huerta's ease of reading (1959, as corrected: 206.84 − 60 P − 1.02 F, P syllables a word, F words a
        sentence) and Szigriszt's perspicuity on the INFLESZ scale (Barrio-Cantalejo et al. 2008, An. Sist. Sanit. Navar. 31:
        55 to 65 is 'normal', over 65 'quite easy')."""
        for paper in PAPERS:
            if told(paper)["language"] != "es":
                continue
            sentences, words = sentences_and_words(paper)
            syllables = sum(spanish_syllables(word) for word in words)
            a_word, a_sentence = syllables / len(words), len(words) / len(sentences)
            ease = 206.84 - 60 * a_word - 1.02 * a_sentence
            szigriszt = 206.835 - 62.3 * a_word - a_sentence
            print(f"{paper.name}: Fernández Huerta {ease:.1f}, Szigriszt {szigriszt:.1f}")
            self.assertGreaterEqual(ease, 70, paper.name)
            self.assertGreaterEqual(szigriszt, 65, paper.name)

    def test_spanish_syllables_are_counted_as_the_grammar_does(self):
        """Real Academia Española, Nueva gramática: diphthongs count once, two strong vowels and an accented weak one twice."""
        for word, count in [("agua", 2), ("caliente", 3), ("día", 2), ("aparato", 4), ("leer", 2), ("que", 1), ("ciudad", 2), ("quiere", 2), ("revisión", 3)]:
            self.assertEqual(spanish_syllables(word), count, word)


def spanish_syllables(word: str) -> int:
    word = re.sub(r"(?<=[qg])u(?=[eiéí])", "", word.lower())
    nuclei = 0
    before = ""
    for letter in word:
        if letter in "aeiouáéíóúü":
            weak = letter in "iuü"
            before_weak = before in ("i", "u", "ü")
            joined = before and before in "aeiouáéíóúü" and ((weak and before not in "íú") or (before_weak and letter not in "íú"))
            nuclei += not joined
        before = letter
    if word.endswith("y") and len(word) > 1 and word[-2] not in "aeiou":
        nuclei += 1
    return max(nuclei, 1)


if __name__ == "__main__":
    unittest.main()
