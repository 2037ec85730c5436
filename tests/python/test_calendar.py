"""Due days as iCalendar, read back by an independent library (icalendar, PyPI): every day, text, place and reminder is the one that
was written. The writer is `core/src/round/calendar.rs`, asked through `core/examples/calendar_for_python.rs`.
"""

import datetime
import json
import random
import subprocess
import unittest
from pathlib import Path

from icalendar import Calendar

ROOT = Path(__file__).resolve().parents[2]
SEED = 5545
# What a text can be spoilt by: separators, escapes, quotes, new lines, other alphabets, signs of four octets, long words.
PIECES = ["Service", ";", ",", "\\", "\\n", "\n", "\"", ":", "=", "ñandú", "水", "🔧", "x" * 80, " ", "BEGIN:VEVENT", "%", "'"]


def text(rng, longest):
    return "".join(rng.choice(PIECES) for _ in range(rng.randint(1, longest))).strip()


class DueDays(unittest.TestCase):
    def written(self, entries, made_utc_ms):
        # Built with everything else by tests/run.
        command = [str(ROOT / "target/debug/examples/calendar_for_python")]
        asked = json.dumps({"made_utc_ms": made_utc_ms, "entries": entries})
        return subprocess.run(command, cwd=ROOT, check=True, input=asked.encode(), stdout=subprocess.PIPE).stdout

    def test_what_is_written_is_read_back(self):
        rng = random.Random(SEED)
        first = datetime.date(2024, 1, 1)
        entries = [
            {
                "uid": f"due-{number}@office.invalid",
                "on": (first + datetime.timedelta(days=rng.randint(0, 6000))).isoformat(),
                "title": text(rng, 8).replace("\n", " ") or "Service",
                "text": text(rng, 30),
                "place": rng.choice(["", "1 Mill Lane, Lower Weir"]),
                "remind_days": rng.choice([None, 1, 14, 30]),
            }
            for number in range(300)
        ]
        raw = self.written(entries, 1_772_494_200_000)
        for line in raw.split(b"\r\n"):
            self.assertLessEqual(len(line), 75)
            self.assertNotIn(b"\n", line)
        read = Calendar.from_ical(raw)
        self.assertEqual(read["VERSION"], "2.0")
        events = read.walk("VEVENT")
        self.assertEqual(len(events), len(entries))
        for entry, event in zip(entries, events):
            on = datetime.date.fromisoformat(entry["on"])
            self.assertEqual(event.errors, [])
            self.assertEqual(str(event["UID"]), entry["uid"])
            self.assertEqual(event["DTSTART"].dt, on)
            self.assertEqual(event["DTEND"].dt, on + datetime.timedelta(days=1))
            self.assertEqual(event["DTSTAMP"].dt, datetime.datetime(2026, 3, 2, 23, 30, tzinfo=datetime.timezone.utc))
            self.assertEqual(str(event["SUMMARY"]), entry["title"])
            self.assertEqual(str(event.get("DESCRIPTION", "")), entry["text"])
            self.assertEqual(str(event.get("LOCATION", "")), entry["place"])
            alarms = event.walk("VALARM")
            self.assertEqual([alarm["TRIGGER"].dt for alarm in alarms], [-datetime.timedelta(days=days) for days in [entry["remind_days"]] if days])


if __name__ == "__main__":
    unittest.main()
