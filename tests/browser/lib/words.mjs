// The words that people should see, read from the Fluent files, so that no test repeats them.

import { existsSync, readFileSync, readdirSync } from "node:fs";
import path from "node:path";
import { ROOT } from "./coilside.mjs";

/** @param {string} language @returns {string[]} */
function files(language) {
  const core = path.join(ROOT, "core/src/words", language);
  const packs = path.join(ROOT, "core/packs");
  return [
    ...readdirSync(core).map((name) => path.join(core, name)),
    ...readdirSync(packs).map((pack) => path.join(packs, pack, `${language}.ftl`)).filter((file) => existsSync(file)),
    path.join(ROOT, "office/src/words", `${language}.ftl`),
  ];
}

/**
 * All messages of a language with their attributes as `key.attribute`. Only what our files use of Fluent: one line a
 * value, with places as `{ $name }`.
 *
 * @param {string} language
 * @returns {Map<string, string>}
 */
export function words(language) {
  const known = new Map();
  for (const file of files(language)) {
    let key = "";
    for (const line of readFileSync(file, "utf8").split("\n")) {
      const message = /^([a-z][\w-]*) =\s*(.*)$/.exec(line);
      const attribute = /^\s+\.([\w-]+) =\s*(.*)$/.exec(line);
      if (message) known.set((key = message[1] ?? ""), message[2] ?? "");
      else if (attribute) known.set(`${key}.${attribute[1]}`, attribute[2] ?? "");
    }
  }
  return known;
}

const ENGLISH = words("en");

/** A message of English that must be there. @param {string} key @param {Record<string, string>} [places] */
export function english(key, places = {}) {
  return fill(ENGLISH, key, places);
}

/** @param {Map<string, string>} known @param {string} key @param {Record<string, string>} [places] */
export function fill(known, key, places = {}) {
  const text = known.get(key);
  if (text === undefined) throw new Error(`no words for ${key}`);
  return text.replace(/\{ \$(\w+) \}/g, (_, name) => places[name] ?? "");
}

/**
 * Keys that stand on a page instead of their words.
 * @param {string} text
 * @returns {string[]}
 */
export function rawKeys(text) {
  const tokens = text.match(/[a-z]+(?:-[a-z0-9]+)+(?:\.[a-z]+(?:-\d+)?)?/g) ?? [];
  return [...new Set(tokens.filter((token) => ENGLISH.has(token) || /^shell-/.test(token)))];
}
