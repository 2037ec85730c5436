"""The performance model's error in the core is what hplib's table says today: worked out again and compared with the numbers in the
core and with the committed table."""

import csv
import importlib.util
import pathlib
import unittest

import coilside

OUTSIDE = pathlib.Path(__file__).resolve().parent.parent / "outside"
# Numbers are written to five decimals.
HALF_A_STEP = 0.6e-5


def script():
    spec = importlib.util.spec_from_file_location("performance_model", OUTSIDE / "performance_model.py")
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


class PerformanceError(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.script = script()
        cls.spreads = cls.script.measured(coilside)

    def test_the_core_holds_the_measured_numbers(self):
        for one in self.spreads:
            with self.subTest(kind=one.kind, quantity=one.quantity):
                core = coilside.performance_error(one.kind)
                self.assertEqual(core.machines, one.machines)
                if one.quantity == "COP":
                    self.assertAlmostEqual(core.cop_u_per_k, one.u_per_k, delta=HALF_A_STEP)
                    continue
                self.assertAlmostEqual(core.capacity_u_per_k, one.u_per_k, delta=HALF_A_STEP)
                self.assertAlmostEqual(core.capacity_by_water_per_k, one.by_water_per_k, delta=HALF_A_STEP)
                # Only air's source moves in the table; the other kinds are given air's slope.
                if one.kind == "air fixed":
                    self.assertAlmostEqual(core.capacity_by_source_per_k, one.by_source_per_k, delta=HALF_A_STEP)

    def test_every_machine_of_the_table_is_in_one_kind(self):
        counted = sum(one.machines for one in self.spreads if one.quantity == "COP")
        self.assertEqual(counted, self.script.MACHINES)

    def test_two_standard_uncertainties_hold_95_percent_of_the_table(self):
        for one in self.spreads:
            with self.subTest(kind=one.kind, quantity=one.quantity):
                self.assertLessEqual(max(-one.per_k[0], one.per_k[4]), 2.2 * one.u_per_k)

    def test_the_committed_table_is_what_is_measured(self):
        written = csv.reader((OUTSIDE / "performance_error.tsv").read_text().splitlines(), delimiter="\t")
        measured = csv.reader(self.script.page(self.spreads).splitlines(), delimiter="\t")
        for old, new in zip(written, measured, strict=True):
            for a, b in zip(old, new, strict=True):
                try:
                    self.assertAlmostEqual(float(a), float(b), delta=3 * HALF_A_STEP)
                except ValueError:
                    self.assertEqual(a, b)


if __name__ == "__main__":
    unittest.main()
