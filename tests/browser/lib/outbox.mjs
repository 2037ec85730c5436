// What the outbox's screen tells, read as a person reads it, and what the office has on its disk at the same moment.

import assert from "node:assert/strict";
import { existsSync, readFileSync, statSync } from "node:fs";
import path from "node:path";

import { sha256 } from "./record.mjs";
import { rows } from "./rows.mjs";
import { english } from "./words.mjs";

/** A pattern of a message with its places as groups. @param {string} key */
function pattern(key) {
  const parts = english(key, new Proxy({}, { get: (_, name) => `\u0000${String(name)}\u0000` })).split("\u0000");
  const escaped = parts.map((part, at) => (at % 2 ? `(?<${part}>.+?)` : part.replace(/[.*+?^${}()|[\]\\]/g, "\\$&")));
  return new RegExp(`^${escaped.join("")}$`, "m");
}

/** @param {string} key */
function unanchored(key) {
  return new RegExp(pattern(key).source.slice(1, -1).replace("(?<count>.+?)", "(?<count>\\d+)"));
}

const MUCH = pattern("outbox-much");
const EVENTS = unanchored("outbox-events");
const PHOTOS = unanchored("outbox-photos");
const SENDING = pattern("outbox-sending");
const ARRIVED = pattern("outbox-photo-arrived");
const LAST_SAFE = pattern("outbox-last-safe");
const REASONS = ["no-answer", "not-the-office", "busy", "no-token"].map((why) => english(`hindered-${why}`));
/** '1.2 MB' is told of what has 1.15 to 1.25 million bytes. */
const ROUNDED_BYTES = 50_000;

/**
 * @typedef {object} Told
 * @property {string} text
 * @property {boolean} allSafe
 * @property {number} events that wait
 * @property {number} photos that wait
 * @property {string[]} sending
 * @property {{ arrived: number, size: number } | null} arrived of the photograph that is being sent, bytes as rounded
 * @property {string | undefined} why nothing goes out
 * @property {string | undefined} lastSafe a clock
 */

/** @param {import("playwright-core").Page} page @returns {Promise<Told>} */
export async function told(page) {
  const text = (await page.locator("main").innerText()).replaceAll("\u00a0", " ");
  const allSafe = text.includes(english("outbox-all-safe"));
  const much = MUCH.exec(text)?.groups?.what ?? "";
  assert.ok(allSafe || much, `the screen tells neither that all is safe nor how much waits:\n${text}`);
  const sending = text.split("\n").flatMap((line) => SENDING.exec(line)?.groups?.what ?? []);
  const arrived = sending.map((what) => ARRIVED.exec(what)?.groups).find((groups) => groups);
  const bytes = (/** @type {string | undefined} */ size) => Math.round(parseFloat(size ?? "") * (size?.endsWith("kB") ? 1e3 : 1e6));
  return {
    text,
    allSafe,
    events: Number(EVENTS.exec(much)?.groups?.count ?? 0),
    photos: Number(PHOTOS.exec(much)?.groups?.count ?? 0),
    sending,
    arrived: arrived ? { arrived: bytes(arrived.arrived), size: bytes(arrived.size) } : null,
    why: REASONS.find((why) => text.includes(why)),
    lastSafe: LAST_SAFE.exec(text)?.groups?.clock,
  };
}

/** What the office has of one visit. */
export class Disk {
  /** @param {string} folder the office's @param {{ sha256: string, bytes: number }[]} photos */
  constructor(folder, photos) {
    this.folder = folder;
    this.photos = photos;
    /** Those that were seen to be whole, by digest. @type {Set<string>} */
    this.whole = new Set();
  }

  /** @param {string} visit */
  look(visit) {
    for (const { sha256: digest } of this.photos) this.isWhole(digest);
    const database = path.join(this.folder, "office.db");
    const [count] = rows(
      database,
      `SELECT (SELECT count(*) FROM event WHERE visit = '${visit}') AS events, (SELECT count(*) FROM seal WHERE visit = '${visit}') AS seals,
              (SELECT max(safe_ms) FROM photo WHERE visit = '${visit}') AS safe_ms`,
    );
    return { events: count?.events, sealed: count?.seals > 0, photos: this.whole.size, lastSafeMs: count?.safe_ms };
  }

  /** Whether a photograph is there with all its bytes. Once it was, it is. @param {string} digest */
  isWhole(digest) {
    const file = path.join(this.folder, "photos", digest.slice(0, 2), digest);
    if (!this.whole.has(digest) && existsSync(file) && sha256(readFileSync(file)) === digest) this.whole.add(digest);
    return this.whole.has(digest);
  }

  /** The most bytes that are there of a photograph of about that size. @param {number} size */
  arrived(size) {
    const there = this.photos
      .filter(({ bytes }) => Math.abs(bytes - size) <= ROUNDED_BYTES)
      .map(({ sha256: digest, bytes }) => {
        const part = this.part(digest); // looked at first: it may become the whole photograph in between, never the other way
        return this.isWhole(digest) ? bytes : part;
      });
    return Math.max(...there, -1);
  }

  /** How much of a photograph has come that is not whole yet. @param {string} digest */
  part(digest) {
    try {
      return statSync(path.join(this.folder, "parts", `${digest}.part`)).size;
    } catch {
      return 0; // none, or whole just now
    }
  }
}

/**
 * Nothing is called safe that is not on the office's disk, and nothing is said to have arrived that is not there.
 * @param {Told} told read before the disk was looked at @param {ReturnType<Disk["look"]>} there @param {Disk} disk
 * @param {{ events: number, photos: number }} whole of the visit
 */
export function isTrue(told, there, disk, whole) {
  const says = `\n${told.text}\n${JSON.stringify(there)}`;
  assert.ok(whole.events - told.events <= there.events, `entries of the log are called safe that the office has not${says}`);
  assert.ok(whole.photos - told.photos <= there.photos, `photographs are called safe that the office has not${says}`);
  if (told.allSafe) assert.ok(there.sealed, `all is called safe, and the seal is not there${says}`);
  if (told.allSafe) assert.deepEqual(told.sending, [], `all is safe, and something is being sent${says}`);
  if (told.arrived) {
    const has = disk.arrived(told.arrived.size);
    assert.ok(told.arrived.arrived <= has + ROUNDED_BYTES, `more is said to have arrived than the ${has} bytes there${says}`);
  }
}
