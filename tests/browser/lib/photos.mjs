// Photographs with EXIF, made by tests/browser/photos.py in the project's Python environment.

import { execFileSync } from "node:child_process";
import path from "node:path";
import { ROOT } from "./coilside.mjs";

/** The project's Python environment. */
export const PYTHON = process.env.COILSIDE_PYTHON ?? path.join(ROOT, "target/venv/bin/python");

/**
 * @typedef {object} Photo
 * @property {string} file absolute path
 * @property {string} sha256 hexadecimal
 * @property {number} bytes
 * @property {number} stored_width
 * @property {number} stored_height
 * @property {Record<string, string | number>} exif as written
 */

/**
 * @param {string} folder
 * @param {string[]} args as photos.py takes them, for instance `["--count", "12", "--latitude=1.5", "--longitude=2"]`
 * @returns {Photo[]}
 */
export function makePhotos(folder, args) {
  const out = execFileSync(PYTHON, [path.join(ROOT, "tests/browser/photos.py"), folder, ...args], { encoding: "utf8" });
  return out.trim().split("\n").map((line) => JSON.parse(line));
}
