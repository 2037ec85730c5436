"""Runs every unittest in every *.py file of the folders given and closes with the line `N passed, N failed`.

A skipped test, an expected failure and an unexpected success count as failed: nothing is skipped silently.
"""

import sys
import unittest
from pathlib import Path


def main(folders: list[str]) -> int:
    suite = unittest.TestSuite()
    for folder in folders:
        if not Path(folder).is_dir():
            print(f"{folder}: no such folder")
            print("0 passed, 1 failed")
            return 1
        suite.addTests(unittest.TestLoader().discover(folder, pattern="*.py"))
    # A failed import comes out of discover as a test that fails.
    result = unittest.TextTestRunner(stream=sys.stdout, verbosity=2).run(suite)
    for test, why in result.skipped:
        print(f"FAILED: {test} was skipped: {why}")
    # A test can hold several failed subtests; a set-up that fails is no test of testsRun.
    bad = (
        len(result.failures)
        + len(result.errors)
        + len(result.skipped)
        + len(result.expectedFailures)
        + len(result.unexpectedSuccesses)
    )
    good = max(result.testsRun - bad, 0)
    print(f"{good} passed, {bad} failed")
    return 0 if bad == 0 else 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
