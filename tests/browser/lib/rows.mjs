// Reads the program's SQLite files, by Python's sqlite3: the check does not go through the program that it checks.

import { execFileSync } from "node:child_process";
import path from "node:path";
import { ROOT } from "./coilside.mjs";
import { PYTHON } from "./photos.mjs";

const ANSWER_BYTES_MAX = 64 << 20;

/**
 * @param {string} file
 * @param {string} query
 * @returns {Record<string, any>[]} bytes as hexadecimal digits
 */
export function rows(file, query) {
  const script = path.join(ROOT, "tests/browser/rows.py");
  return JSON.parse(execFileSync(PYTHON, [script, file, query], { encoding: "utf8", maxBuffer: ANSWER_BYTES_MAX }));
}
