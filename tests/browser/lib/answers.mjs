// What the technician of the tests would answer: by field, so that the order of a pack does not matter. Made up, plausible.

import { readFileSync, readdirSync, statSync } from "node:fs";
import path from "node:path";

import { ROOT } from "./coilside.mjs";

/** Numbers and words by field, with `_` for what no id may hold. @type {Record<string, string>} */
const TYPED = {
  "read_serial": "TW9-20417",
  "read_controller-serial": "TC-5512",
  "read_hours": "4321",
  "read_air-on-found": "18,5", // a comma, as half of the world writes it
  "read_air-off-found": "13.0",
  "read_water-in-found": "40.5",
  "read_water-out-found": "43.0",
  "read_flow-found": "9.1",
  "read_power-found": "981",
  "read_tank-found": "42.0",
  "read_low-pressure-found": "300",
  "read_high-pressure-found": "1950",
  "read_suction-line-found": "6.0",
  "read_discharge-line-found": "88.0",
  "read_liquid-line-found": "52.0",
  "read_loop-temperature": "24.0",
  "read_supply-ph": "7.4",
  "read_supply-conductivity": "412",
  "read_supply-hardness": "178",
  "read_supply-alkalinity": "152",
  "read_water-use": "180",
  "read_cleaner-parts": "12",
  "read_cleaner-percent": "7.7", // the same label said in its other two ways
  "read_cleaner-dose": "83",
  "read_cleaner-volume": "11.5",
  "read_descaler-parts": "11",
  "read_descaler-percent": "8.3",
  "read_descaler-dose": "91",
  "read_descaler-volume": "2.4",
  "read_acid-ph-early": "1.2",
  "read_acid-ph-end": "1.9",
  "read_bucket-ph": "7.6",
  "read_neutraliser-parts": "21",
  "read_neutraliser-percent": "4.5",
  "read_neutraliser-dose": "48",
  "read_neutraliser-volume": "2.3",
  "read_rinse-ph": "7.3",
  "read_rinse-conductivity": "418",
  "read_insulation": "120.5",
  "read_winding-temperature": "23.5",
  "read_capacitance": "24.7",
  "read_capacitance-label": "25",
  "read_air-on-left": "18.4",
  "read_air-off-left": "11.5",
  "read_water-in-left": "40.0",
  "read_water-out-left": "45.5",
  "read_flow-left": "10.2",
  "read_power-left": "979",
  "read_tank-left": "44.5",
  "read_low-pressure-left": "350",
  "read_high-pressure-left": "1800",
  "read_suction-line-left": "7.5",
  "read_discharge-line-left": "80.0",
  "read_liquid-line-left": "48.0",
  "read_tap-hot": "47.5",
  "home_schedule": "06:00–22:00",
  "away_schedule": "always on",
  "back_schedule": "06:00–22:00",
  "home_set-point": "55 °C",
  "away_set-point": "40 °C",
  "back_set-point": "55 °C",
};

/** Options by field, as they begin on the screen; of an unknown question the first. @type {Record<string, string>} */
const CHOSEN = {
  "condition_first-service": "No",
  "condition_coil": "Plain",
  "condition_sea": "Far",
  "condition_casing": "Metal",
  "condition_exchanger": "Stainless",
  "condition_descaler": "Citric",
  "condition_certificate": "Yes",
  "condition_reheat": "Yes",
};

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
