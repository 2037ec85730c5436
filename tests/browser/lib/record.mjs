// What must hold of a visit in the office's folder, worked out here from bytes, by Node's own SHA-256.

import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { rows } from "./rows.mjs";

/** @typedef {{ seq: number, bytes: string, hash?: string }} Row bytes in hexadecimal digits */

/** @param {Uint8Array | string} bytes */
export const sha256 = (bytes) => createHash("sha256").update(bytes).digest("hex");

/** @param {string} folder the office's @param {string} visit @returns {Row[]} */
export function officeEvents(folder, visit) {
  const query = `SELECT seq, bytes, hash FROM event WHERE visit = '${visit}' ORDER BY seq`;
  return /** @type {Row[]} */ (rows(path.join(folder, "office.db"), query));
}

/** @param {string} folder the browser shell's @param {string} visit @returns {Row[]} */
export function deviceEvents(folder, visit) {
  return /** @type {Row[]} */ (rows(path.join(folder, "field.db"), `SELECT seq, bytes FROM event WHERE visit = '${visit}' ORDER BY seq`));
}

/**
 * Each event follows the one before: numbered from 0 without a gap, and `prev` is the SHA-256 of the bytes before it,
 * 64 zeros at the first.
 *
 * @param {Row[]} stored
 * @param {string} visit
 * @returns {any[]} the events
 */
export function chained(stored, visit) {
  let prev = "0".repeat(64);
  return stored.map(({ seq, bytes, hash }, at) => {
    const raw = Buffer.from(bytes, "hex");
    const event = JSON.parse(raw.toString("utf8"));
    assert.equal(seq, at, `row ${at} has number ${seq}`);
    assert.equal(event.seq, at, `event ${at} says that it is number ${event.seq}`);
    assert.equal(event.visit, visit, `event ${at} belongs to another visit`);
    assert.equal(event.prev, prev, `event ${at} does not follow the one before it`);
    prev = sha256(raw);
    if (hash !== undefined) assert.equal(hash, prev, `the office keeps another hash of event ${at}`);
    return event;
  });
}

/** What a technician adds of their own accord, and what a device notes of its own: no part of what a scripted visit comes to. */
const BESIDE = new Set(["finding-added", "customer-noted", "device-restarted", "facts-lapsed", "fact-rechecked"]);

/**
 * A visit event kind by event kind, each with what it is about: what the scripted visits of all shells must come to alike. The place comes whenever
 * the device has one, so it is listed last.
 * @param {any[]} events
 * @returns {string[]} such as `reading-taken flow-found`
 */
export function kindsOf(events) {
  const about = (/** @type {any} */ event) => event.step ?? event.reading ?? event.slot ?? event.excursion ?? event.condition ?? event.mix;
  const lines = events.filter(({ kind }) => !BESIDE.has(kind)).map((event) => [event.kind, about(event)].filter(Boolean).join(" "));
  const isPlace = (/** @type {string} */ line) => line.startsWith("place-");
  return [...lines.filter((line) => !isPlace(line)), ...lines.filter(isPlace)];
}

/**
 * The original on the office's disk has the bytes by which it is named.
 *
 * @param {string} folder
 * @param {string} digest
 * @returns {number} how many bytes
 */
export function original(folder, digest) {
  const file = path.join(folder, "photos", digest.slice(0, 2), digest);
  assert.ok(existsSync(file), `the photograph ${digest} is not in the office`);
  const bytes = readFileSync(file);
  assert.equal(sha256(bytes), digest, `the photograph ${digest} has other bytes in the office`);
  return bytes.length;
}
