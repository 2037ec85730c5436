"""One visit's numbers, readings in and results out, worked out again from reference libraries alone.

Water: `iapws` (IAPWS-95). Doubt: `GTC`, a GUM calculator that tracks shared causes by itself. Wet bulb: `psychrolib`. Scale: PHREEQC
by `phreeqpython`. The model that brings as found to the conditions as left is written out anew here from its stated equations; how
far off it is was measured elsewhere (`tests/outside/performance_model.py`).
Nothing here calls a function of the core's science: the values come off the screens, as a technician sees them.
"""

import json
import math
import os
import re
import tempfile
import unittest

import iapws
import phreeqpython
import psychrolib
from GTC import exp, log10, uncertainty, ureal, value

import coilside
from test_short_visit import ASSIGNMENT

# As typed: the value, and the half width of the instrument's limits as the pack states it.
READINGS = {
    "air-on-found": (18.5, 0.5),
    "air-off-found": (13.0, 0.5),
    "water-in-found": (40.5, 1.0),
    "water-out-found": (43.0, 1.0),
    "flow-found": (9.1, 0.5),
    "power-found": (981.0, 30.0),
    "air-on-left": (18.4, 0.5),
    "air-off-left": (11.5, 0.5),
    "water-in-left": (40.0, 1.0),
    "water-out-left": (45.5, 1.0),
    "flow-left": (10.2, 0.5),
    "power-left": (979.0, 30.0),
    "supply-ph": (7.4, 0.1),
    "supply-conductivity": (412.0, 10.0),
    "supply-hardness": (178.0, 18.0),
    "supply-alkalinity": (150.0, 18.0),
    "insulation": (120.5, 0.2),
    "winding-temperature": (24.0, 1.0),
    "capacitance": (24.7, 0.5),
}
LAST_YEAR = {"flow-found": ("9.5", "L/min"), "water-in-found": ("38.5", "Cel"), "water-out-found": ("42.5", "Cel")}
WHOLE_NUMBERS = {"power-found", "power-left", "supply-conductivity", "supply-hardness", "supply-alkalinity"}
COMMON = 0.8  # correlation of two readings of one instrument in one place: common practice, no source
IAPWS_RELATIVE = 1e-3  # the core's equation for water (IAPWS SR6-08) lies this near to IAPWS-95, rises of a few kelvin included


def rectangular(half_width):
    """An error within these limits: JCGM 100, 4.3.7."""
    return ureal(0, half_width / math.sqrt(3))


def reference_readings():
    """Each reading as GTC carries it: what an instrument keeps in one place is one and the same input before and after."""
    kept, readings = {}, {}
    for name, (reading, limit) in READINGS.items():
        place = re.sub("-(found|left)$", "", name)
        if place not in kept:
            kept[place] = rectangular(limit) * math.sqrt(COMMON)
        step = 1 if name in WHOLE_NUMBERS else 0.1
        readings[name] = reading + kept[place] + rectangular(limit) * math.sqrt(1 - COMMON) + rectangular(step / 2)
    return readings


def water(t):
    """Density and enthalpy at an uncertain temperature, from IAPWS-95, and their slopes from differences of it."""

    def at(celsius):
        state = iapws.IAPWS95(T=celsius + 273.15, P=0.1)
        return state.rho, state.h * 1000

    (rho, h), step = at(value(t)), 0.05
    (rho_less, h_less), (rho_more, h_more) = at(value(t) - step), at(value(t) + step)
    off = t - value(t)
    return rho + (rho_more - rho_less) / (2 * step) * off, h + (h_more - h_less) / (2 * step) * off


MODEL = {"wet or dry": ureal(0, 1), "mean or outlet": ureal(0, 1), "humidity": rectangular(0.3)}
MODEL.update({(of, by): ureal(0, 1) for of in ("cop", "heat") for by in ("source", "water")})
COP_U, HEAT_U, HEAT_BY_SOURCE, HEAT_BY_WATER = 0.01288, 0.01016, 0.02808, -0.00376  # for each kelvin; air, one speed


def conditions(read, stage):
    """The temperatures that stand for source and water: their middle, and the way to either end as one shared input."""
    psychrolib.SetUnitSystem(psychrolib.SI)

    def bulb(dry, humidity):
        return psychrolib.GetTWetBulbFromRelHum(dry, humidity, 101_325)

    air, t, humidity, step = read[f"air-on-{stage}"], value(read[f"air-on-{stage}"]), 0.6, 0.01
    by_air = (bulb(t + step, humidity) - bulb(t - step, humidity)) / (2 * step)
    by_humidity = (bulb(t, humidity + step) - bulb(t, humidity - step)) / (2 * step)
    wet = bulb(t, humidity) + by_air * (air - t) + by_humidity * MODEL["humidity"]
    source = (air + wet + 1) / 2 + (t - value(wet) - 1) / 2 / math.sqrt(3) * MODEL["wet or dry"]
    mean, end = (read[f"water-in-{stage}"] + read[f"water-out-{stage}"]) / 2, read[f"water-out-{stage}"] - 2.5
    return source, (mean + end) / 2 + value(end - mean) / 2 / math.sqrt(3) * MODEL["mean or outlet"]


def as_left(read):
    """What brings COP and heat from the conditions as found to those as left."""
    (source, tap), (source_left, tap_left) = conditions(read, "found"), conditions(read, "left")

    def path(start, end, least, most):  # a kelvin outside what the model was measured on counts twice
        weighted = [2 * value(x) - min(max(value(x), least), most) for x in (start, end)]
        return weighted[1] - weighted[0]

    paths = {"source": path(source, source_left, -7, 12), "water": path(tap, tap_left, 21.5, 49.5)}

    def model(of, u):
        return 1 + sum(u * kelvin * MODEL[of, by] for by, kelvin in paths.items())

    def carnot(s, w):
        return (w + 5 + 273.15) / ((w + 5) - (s - 10))

    cop = carnot(source_left, tap_left) / carnot(source, tap) * model("cop", COP_U)
    grown = HEAT_BY_SOURCE * (source_left - source) + HEAT_BY_WATER * (tap_left - tap)
    return {"result-cop": cop, "result-heat": exp(grown) * model("heat", HEAT_U)}


def reference_results(read):
    """The expected results by the name of their screen: a list of uncertain numbers, as found before as left."""
    results = {name: [] for name in ("result-heat", "result-cop", "result-water-rise", "result-air-drop")}
    for stage in ("found", "left"):
        (rho, cold), (_, hot) = water(read[f"water-in-{stage}"]), water(read[f"water-out-{stage}"])
        heat = read[f"flow-{stage}"] / 60_000 * rho * (hot - cold)
        results["result-heat"].append(heat)
        results["result-cop"].append(heat / read[f"power-{stage}"])
        results["result-water-rise"].append(read[f"water-out-{stage}"] - read[f"water-in-{stage}"])
        results["result-air-drop"].append(read[f"air-on-{stage}"] - read[f"air-off-{stage}"])
    results["result-insulation"] = [read["insulation"]]
    # Halving for each 10 K: IEEE 43, from memory.
    results["result-insulation-40"] = [read["insulation"] * 0.5 ** ((40 - read["winding-temperature"]) / 10)]
    results["result-capacitor"] = [read["capacitance"]]
    results["result-scaling"] = [langelier(read)]
    return results


def langelier(read):
    """The handbooks' short formula, from memory, with GTC's own derivatives."""
    calcium = read["supply-hardness"] * (0.8 + rectangular(0.2))
    solids = read["supply-conductivity"] * (0.65 + rectangular(0.1))
    a = (log10(solids) - 1) / 10
    b = -13.12 * log10(read["water-out-left"] + 273) + 34.55
    saturation = (9.3 + a + b) - (log10(calcium) - 0.4 + log10(read["supply-alkalinity"]))
    return read["supply-ph"] - saturation + rectangular(0.25)


NAMES = {
    "Heat to the water": "result-heat",
    "Coefficient of performance": "result-cop",
    "Temperature rise of the water": "result-water-rise",
    "Temperature drop of the air": "result-air-drop",
    "Insulation to earth, as measured": "result-insulation",
    "Insulation to earth, at 40 °C": "result-insulation-40",
    "Run capacitor": "result-capacitor",
    "Scaling index of the supply water (Langelier)": "result-scaling",
}
NUMBER = r"([+\u2212-]?[0-9.]+)"


def numbers_of(text):
    """'As found: 1600 ± 1000 W' as value, doubt and the decimals that are written."""
    for found, doubt in re.findall(f"{NUMBER}\u00a0±\u00a0{NUMBER}", text):
        yield float(found.replace("\u2212", "-")), float(doubt), len(found.partition(".")[2])


class VisitNumbers(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        folder = tempfile.TemporaryDirectory()
        cls.addClassCleanup(folder.cleanup)
        clock = [1_777_881_600_000]

        def now():
            clock[0] += 5_000
            return coilside.Now(utc_ms=clock[0], offset_min=120, mono_ms=clock[0], mono_epoch="python")

        door = coilside.Door.open(
            coilside.DoorSetup(folder=folder.name, entropy=os.urandom(32), now=now(), language="en", public_key=b"")
        )
        history = [
            {"reading": name, "value": text, "unit": unit, "date": "2025-05-05"}
            for name, (text, unit) in LAST_YEAR.items()
        ]
        [unit] = ASSIGNMENT["units"]
        door.assigned(json.dumps([{**ASSIGNMENT, "units": [{**unit, "history": history}]}]))

        def act(action):
            return door.act(f"act-{clock[0]}", action, now()).screen

        act(coilside.Action.START_VISIT(assignment="a1"))
        for name, (reading, _) in READINGS.items():
            act(coilside.Action.ENTER(field=f"read:{name}", text=str(reading)))
        act(coilside.Action.ENTER(field="read:capacitance-label", text="25"))
        cls.sheet = act(coilside.Action.GO(to="readings")).blocks
        cls.details = act(coilside.Action.GO(to="details")).blocks
        cls.read = reference_readings()
        cls.expected = reference_results(cls.read)

    def lines_under(self, key):
        """The words below a result's heading, up to the next."""
        lines, inside = [], False
        for block in self.sheet:
            if block.is_TEXT() and block.level > 0:
                inside = NAMES.get(block.text) == key
            elif inside and block.is_TEXT():
                lines.append(block.text)
            elif inside and block.is_CHART():
                lines.extend(bar.text for bar in block.bars)
        return lines

    def test_bars_have_the_length_and_the_doubt_that_iapws_and_gtc_give(self):
        charts = [block for block in self.sheet if block.is_CHART()]
        self.assertEqual(len(charts), 2)
        for chart, key in zip(charts, ("result-heat", "result-cop")):
            self.assertEqual([bar.label for bar in chart.bars], ["As found", "As left"])
            for bar, expected in zip(chart.bars, self.expected[key]):
                print(f"{key} {bar.label}: {bar.value:.4f} ± {bar.doubt:.4f}, "
                      f"expected {value(expected):.4f} ± {2 * uncertainty(expected):.4f}")
                self.assertLess(abs(bar.value / value(expected) - 1), IAPWS_RELATIVE)
                self.assertLess(abs(bar.doubt / (2 * uncertainty(expected)) - 1), IAPWS_RELATIVE)

    def test_every_number_on_the_sheet_is_that_of_the_reference_libraries_as_far_as_it_is_written(self):
        for key, expected in self.expected.items():
            with self.subTest(key):
                written = [numbers for line in self.lines_under(key) for numbers in numbers_of(line)]
                self.assertEqual(len(written), len(expected), self.lines_under(key))
                for (shown, doubt, decimals), reference in zip(written, expected):
                    self.check(shown, doubt, decimals, reference)

    def check(self, shown, doubt, decimals, reference):
        """Two digits of the doubt at most, and the value ends where they end: JCGM 100, 7.2.6."""
        expanded = 2 * uncertainty(reference)
        step = max(10.0 ** (math.floor(math.log10(expanded)) - 1), 10.0**-decimals)
        for is_shown, is_true in ((shown, value(reference)), (doubt, expanded)):
            self.assertLessEqual(abs(is_shown - is_true), 0.5 * step + IAPWS_RELATIVE * abs(is_true))

    def test_differences_are_those_of_gtc_which_tracks_what_both_share(self):
        [results] = [block for block in self.details if block.is_TABLE() and block.caption == "Results"]
        rows = {NAMES[row[0]]: row for row in results.rows}
        for key in ("result-heat", "result-cop", "result-water-rise", "result-air-drop"):
            with self.subTest(key):
                found, left = self.expected[key]
                difference = left - found * as_left(self.read).get(key, 1)
                [(shown, doubt, decimals)] = numbers_of(rows[key][1])
                self.check(shown, doubt, decimals, difference)
                told = abs(value(difference)) > 2 * uncertainty(difference)
                words = {True: "more" if value(difference) > 0 else "less", False: "no difference that can be told"}
                self.assertEqual(rows[key][2], words[told])
        self.assertEqual([rows[f"result-{key}"][2] for key in ("insulation", "capacitor")], ["passed", "passed"])

    def test_last_years_heat_is_worked_out_from_last_years_readings(self):
        [line] = [line for line in self.lines_under("result-heat") if line.startswith("Last time, as found")]
        shown = float(re.search(f"{NUMBER}\u00a0W", line)[1])
        (rho, cold), (_, hot) = water(ureal(38.5, 0)), water(ureal(42.5, 0))
        self.assertLess(abs(shown - value(9.5 / 60_000 * rho * (hot - cold))), 0.5 + 2640 * IAPWS_RELATIVE)
        self.assertIn("2025\u201105\u201105", line)

    def test_the_scaling_index_lies_within_its_doubt_of_phreeqcs(self):
        [(shown, doubt, _)] = numbers_of("\n".join(self.lines_under("result-scaling")))
        hardness_mmol_l = READINGS["supply-hardness"][0] / 100.09  # as calcium carbonate
        solution = phreeqpython.PhreeqPython().add_solution({
            "temp": READINGS["water-out-left"][0], "units": "mmol/kgw", "pH": READINGS["supply-ph"][0],
            "Ca": 0.8 * hardness_mmol_l, "Mg": 0.2 * hardness_mmol_l,
            "Alkalinity": 2 * READINGS["supply-alkalinity"][0] / 100.09, "Na": 0.6, "Cl": "1 charge",
        })
        print(f"scaling index {shown} ± {doubt}, PHREEQC's calcite index {solution.si('Calcite'):.3f}")
        self.assertLess(abs(shown - solution.si("Calcite")), doubt)


if __name__ == "__main__":
    unittest.main()
