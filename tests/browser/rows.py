"""Prints the rows of a query on an SQLite file as a JSON list of objects; bytes as hexadecimal digits.

Node 18 has no SQLite of its own. The file is opened read-only, also while the program has it open.
"""

import json
import sqlite3
import sys
from pathlib import Path


def main(file: str, query: str) -> None:
    database = sqlite3.connect(f"{Path(file).resolve().as_uri()}?mode=ro", uri=True, timeout=20)
    database.row_factory = sqlite3.Row
    rows = [
        {name: row[name].hex() if isinstance(row[name], bytes) else row[name] for name in row.keys()}
        for row in database.execute(query)
    ]
    json.dump(rows, sys.stdout)


if __name__ == "__main__":
    main(*sys.argv[1:])
