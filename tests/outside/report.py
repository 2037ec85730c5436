"""The worst error of every table and grid beside its bound, as a page: REPORT.md, written by the run."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Worst:
    """The point of a table or grid that comes nearest to its bound, or goes beyond it."""

    subject: str
    points: int
    error: float
    bound: float
    unit: str
    at: str
    source: str

    def shown(self, error):
        """An error or bound as the report shows it."""
        return f"{error:.2g} {self.unit}"

    @property
    def share(self):
        """The error as a part of its bound; an error beside a bound of zero is beyond it."""
        if self.bound == 0:
            return 0.0 if self.error == 0 else float("inf")
        return self.error / self.bound


def page(tables, grids):
    """The text of the report. Numbers to two digits: the third differs between machines."""
    lines = [
        "# How far the numbers are from the outside",
        "",
        "Written by `tests/outside/run --grids`. Each line is the point that comes nearest to its bound.",
    ]
    for title, worsts in (("Tables of published values", tables), ("Grids against reference libraries", grids)):
        head = "| subject | points | worst error | bound | at | source |"
        lines += ["", f"## {title}", "", head, "| --- | --: | --: | --: | --- | --- |"]
        for worst in worsts:
            cells = [worst.subject, str(worst.points), worst.shown(worst.error), worst.shown(worst.bound), worst.at, worst.source]
            lines.append("| " + " | ".join(cell.strip().replace("|", "/") for cell in cells) + " |")
    return "\n".join(lines) + "\n"
