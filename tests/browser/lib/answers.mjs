// What the technician of the tests would answer: by field, so that the order of a pack does not matter. Made up, plausible.

import { readFileSync, readdirSync, statSync } from "node:fs";
import path from "node:path";

import { ROOT } from "./coilside.mjs";

/**
 * What every shell's technician of the tests types and chooses, shared by all of them. `typed`: numbers and words by field, with `_` for what no
 * id may hold; some stand there on purpose with a comma, as half of the world writes it, or as a label says the same in another way.
 * `chosen`: options by field, as they begin on the screen; of an unknown question the first.
 *
 * @type {{ typed: Record<string, string>, chosen: Record<string, string> }}
 */
const { typed: TYPED, chosen: CHOSEN } = JSON.parse(readFileSync(path.join(ROOT, "tests/visits/answers.json"), "utf8"));

/** Of a text that nobody thought of. */
const UNKNOWN = "20";

/**
 * Numbers of all packs' readings by field: what the pack has at hand, or the middle of what is usual. Reads only what our
 * packs write of TOML: one field a line.
 *
 * @type {Map<string, string>}
 */
const MIDDLES = new Map();
const PACKS = path.join(ROOT, "core/packs");
for (const name of readdirSync(PACKS).filter((pack) => statSync(path.join(PACKS, pack)).isDirectory())) {
  const toml = readFileSync(path.join(PACKS, name, "pack.toml"), "utf8");
  for (const [, reading = ""] of toml.matchAll(/^\[\[reading\]\]\n((?:(?!\[).*\n)*)/gm)) {
    const id = /^id = "(.*)"$/m.exec(reading)?.[1];
    const preset = /^preset = "(.*)"$/m.exec(reading)?.[1];
    const usual = /^usual = \["(.*)", "(.*)"\]$/m.exec(reading);
    const decimals = Number(/^decimals = (\d)$/m.exec(reading)?.[1] ?? 0);
    const middle = usual && ((Number(usual[1]) + Number(usual[2])) / 2).toFixed(decimals);
    const known = preset ?? middle;
    if (id && known) MIDDLES.set(`read_${id}`, known);
  }
}

/** @param {string} field */
export function answer(field) {
  return TYPED[field] ?? MIDDLES.get(field) ?? UNKNOWN;
}

/** @param {string} field @param {string[]} labels @returns {number} which; the first where the wanted one is not offered */
export function choice(field, labels) {
  const wanted = CHOSEN[field];
  const found = wanted === undefined ? 0 : labels.findIndex((label) => label.startsWith(wanted));
  return Math.max(found, 0);
}
