// A visit on its way to the office while everything fails that can: the office is away, the wire is cut in mid-upload, the
// program on the device is killed, the office is killed. Everything arrives, and at each moment the outbox says what is so.

import assert from "node:assert/strict";
import { mkdirSync, readdirSync } from "node:fs";
import path from "node:path";
import { after, before, test } from "node:test";

import { SlowWire } from "../sending/cutting.mjs";
import { violationsInBoth } from "./lib/axe.mjs";
import { launch, troubles } from "./lib/chromium.mjs";
import { start } from "./lib/coilside.mjs";
import { Disk, isTrue, told } from "./lib/outbox.mjs";
import { makePhotos } from "./lib/photos.mjs";
import { chained, deviceEvents, officeEvents, original } from "./lib/record.mjs";
import { rows } from "./lib/rows.mjs";
import { Technician } from "./lib/technician.mjs";
import { Village } from "./lib/village.mjs";
import { english } from "./lib/words.mjs";

const PHOTOS = 8;
/** Slow enough that the page, which reads its screen every five seconds, sees the first slices go, on a quick machine too. */
const BYTES_PER_SECOND = 150_000;
/** The page reads its screen every five seconds. What is so must be told within this time. */
const TOLD_WITHIN_MS = 12_000;
const PATIENCE_MS = 90_000;
const PHONE = { width: 390, height: 844 };
const SHOTS = process.env.COILSIDE_SHOTS;

/** @type {Village} */ let village;
/** @type {SlowWire} */ let wire;
/** @type {number} */ let way;
/** @type {import("playwright-core").Browser} */ let browser;
/** @type {import("playwright-core").Page} */ let page;
/** @type {Technician} */ let technician;
/** @type {string[]} */ let found;
/** @type {Disk} */ let disk;
/** As the page names it. @type {string} */ let visit;
const whole = { events: 0, photos: PHOTOS };
const axe = /** @type {string[]} */ ([]);
/** What the office had at which time, while the line held. @type {{ at: number, photos: number }[]} */
let seen = [];

/** The browser shell's own process, with the wire for its way to the office. */
async function startField() {
  const args = ["--folder", path.join(village.folder, "field"), "--office", `http://127.0.0.1:${way}`];
  village.field = await start(["field", ...args, "--token-file", path.join(village.folder, "device-token")]);
  return village.field.addresses[0]?.url ?? "";
}

before(async () => {
  [village, browser] = await Promise.all([Village.drawn(), launch()]);
  await village.startOffice();
  wire = new SlowWire(village.port, BYTES_PER_SECOND);
  way = await wire.listen();
  const photos = makePhotos(path.join(village.folder, "camera"), ["--count", String(PHOTOS), "--no-place"]);
  photos.unshift(...photos.splice(-1)); // the large one first
  disk = new Disk(village.officeFolder, photos);
  const context = await browser.newContext({ viewport: PHONE, hasTouch: true });
  context.setDefaultTimeout(30_000);
  page = await context.newPage();
  found = troubles(page);
  page.on("request", (request) => void (visit = /\/door\/incoming\/([^_]+)_/.exec(request.url())?.[1] ?? visit));
  technician = new Technician(page, photos);
  await page.goto(await startField());
  await page.getByRole("button", { name: english("round-start", { site: "Mill House" }) }).waitFor();
});

after(async () => {
  await browser?.close();
  wire?.close();
  await village?.end();
});

/** Looks at the page and then at the disk: the page may be behind, never ahead. And never long behind. */
async function moment() {
  const says = await told(page);
  const there = disk.look(visit);
  isTrue(says, there, disk, whole);
  const now = Date.now();
  const late = seen.findLast(({ at }) => at < now - TOLD_WITHIN_MS);
  if (late) assert.ok(whole.photos - says.photos >= late.photos, `photographs are long there and told as waiting\n${says.text}\n${JSON.stringify(there)}`);
  seen.push({ at: now, photos: there.photos });
  return { says, there };
}

/**
 * Looks again and again until it is as wanted.
 * @param {string} what @param {(at: Awaited<ReturnType<typeof moment>>) => boolean} wanted @param {number} [withinMs]
 */
async function until(what, wanted, withinMs = PATIENCE_MS) {
  for (const since = Date.now(); ; await page.waitForTimeout(150)) {
    const at = await moment();
    if (wanted(at)) return at;
    assert.ok(Date.now() - since < withinMs, `not within ${withinMs} ms: ${what}\n${at.says.text}\n${JSON.stringify(at.there)}`);
  }
}

/** The line or one of its ends is away: what the office had says nothing of what the device can know. */
const broken = () => (seen = []);

/** A photograph is on its way and neither just begun nor nearly there. */
const inTheMiddle = () =>
  disk.photos.some(({ sha256, bytes }) => {
    const part = disk.part(sha256);
    return !disk.whole.has(sha256) && part > bytes / 8 && part < (bytes * 6) / 8;
  });

/** Axe in both schemes, and a picture for people. @param {string} name */
async function inspect(name) {
  axe.push(...(await violationsInBoth(page, name)));
  if (!SHOTS) return;
  mkdirSync(SHOTS, { recursive: true });
  await page.screenshot({ path: path.join(SHOTS, `outbox-${name.replaceAll(" ", "-")}.png`), fullPage: true });
}

test("a visit with photographs is made while the office is away, and the outbox says that all of it waits and why", async () => {
  await village.office?.kill9();
  await page.getByRole("button", { name: english("round-start", { site: "Mill House" }) }).click();
  await technician.settle();
  await technician.goTo(english("menu-photographs"));
  for (const { file } of disk.photos) {
    await page.locator(".shot").last().getByRole("button", { name: english("shot-take") }).click();
    await technician.photograph(file);
  }
  await technician.goTo(english("menu-break-off"));
  await page.locator("[id=field-break-off]").pressSequentially("Called away");
  await technician.settle();
  await technician.hold(page.locator(".foot .hold").first());
  await technician.settle();
  await technician.playUntil(async () => (await technician.title()) === english("sealed-title"));
  await page.locator("main").getByText(english("sealed-waiting")).waitFor();
  await technician.goTo(english("menu-outbox"));

  const first = await told(page);
  assert.equal(first.photos, PHOTOS, first.text);
  assert.ok(first.events > PHOTOS, first.text);
  whole.events = first.events;
  const { says } = await until("a reason in words", ({ says }) => says.why !== undefined, TOLD_WITHIN_MS);
  assert.equal(says.why, english("hindered-no-answer"));
  assert.ok(says.text.includes(english("hindered-no-answer.do")), says.text);
  assert.ok(says.text.includes(english("outbox-seal")), says.text);
  await inspect("office away");
});

test("the wire is cut in the middle of a photograph: it is told within seconds, and nothing is called safe that is not", async () => {
  await village.startOffice();
  await page.getByRole("button", { name: english("outbox-send-now") }).click();
  await until("a photograph is being sent", ({ says }) => (says.arrived?.arrived ?? 0) > 0);
  await inspect("sending");
  await until("the wire can be cut in mid-upload", inTheMiddle);
  wire.cut();
  broken();
  const { says, there } = await until("the cut is told", ({ says }) => says.why !== undefined && says.sending.length === 0, TOLD_WITHIN_MS);
  assert.equal(says.why, english("hindered-no-answer"));
  assert.ok(says.photos > 0 && !says.allSafe, says.text);
  assert.equal(says.events, 0, "entries of the log go first");
  assert.equal(there.events, whole.events);
  await inspect("wire cut");
  await moment();
});

test("the program on the device is killed in the middle of a photograph, started again, and goes on by itself", async () => {
  wire.mend();
  broken();
  await until("an upload goes on", inTheMiddle);
  await village.field?.kill9();
  broken();
  await page.locator(".notice").getByText(english("shell-lost")).waitFor();
  await moment();
  const before = disk.photos.map(({ sha256 }) => disk.part(sha256)).find((part) => part > 0) ?? 0;
  await startField();
  await page.locator(".notice").getByText(english("shell-lost")).waitFor({ state: "detached" });
  if ((await technician.title()) !== english("menu-outbox")) await technician.goTo(english("menu-outbox"));
  await until("it is sent again", ({ says }) => says.sending.length > 0, 30_000);
  assert.ok(before > 0, "nothing was under way when it was killed");
});

test("the office is killed in the middle of a photograph, started again, and everything becomes safe", async () => {
  await until("an upload goes on", inTheMiddle);
  await village.office?.kill9();
  broken();
  const { says } = await until("the office is missed", ({ says }) => says.why !== undefined && says.sending.length === 0, TOLD_WITHIN_MS);
  assert.equal(says.why, english("hindered-no-answer"));
  await village.startOffice();
  broken();
  const { there } = await until("all is there", ({ there }) => there.sealed && there.photos === PHOTOS);
  const last = await until("all is told safe", ({ says }) => says.allSafe, TOLD_WITHIN_MS);
  const clock = (/** @type {number} */ ms) => new Date(ms).toTimeString().slice(0, 5);
  const lastSafe = there.lastSafeMs;
  const clocks = [0, 20_000, 40_000, 60_000].map((later) => clock(lastSafe + later));
  assert.ok(clocks.includes(last.says.lastSafe ?? ""), `last safe at ${last.says.lastSafe}, and the office has it since ${clock(lastSafe)}`);
  assert.equal(last.says.why, undefined, last.says.text);
  await inspect("all safe");
});

test("the visit is whole at the office: events to the byte, photographs by their SHA-256, sealed", async () => {
  await page.close();
  await village.field?.kill9();
  const stored = officeEvents(village.officeFolder, visit);
  const events = chained(stored, visit);
  const sent = deviceEvents(path.join(village.folder, "field"), visit);
  assert.deepEqual(stored.map(({ bytes }) => bytes), sent.map(({ bytes }) => bytes));
  assert.equal(events.length, whole.events, "the outbox counted other entries than there were");
  const taken = events.filter(({ kind }) => kind === "photo-taken").map(({ digest }) => digest);
  assert.deepEqual(taken, disk.photos.map(({ sha256 }) => sha256));
  for (const { sha256, bytes } of disk.photos) assert.equal(original(village.officeFolder, sha256), bytes);
  const office = path.join(village.officeFolder, "office.db");
  assert.deepEqual(rows(office, `SELECT covers FROM seal WHERE visit = '${visit}'`), [{ covers: events.length }]);
  assert.deepEqual(rows(office, "SELECT * FROM branch"), []);
  for (const place of ["parts", "aside"]) assert.deepEqual(readdirSync(path.join(village.officeFolder, place)), [], place);
});

test("the outbox passes axe-core in all these states, and the page had no errors but those of the kill", () => {
  assert.deepEqual(axe, []);
  const expected = /net::ERR_CONNECTION_REFUSED|net::ERR_CONNECTION_RESET|net::ERR_EMPTY_RESPONSE|net::ERR_SOCKET_NOT_CONNECTED|status of 409/;
  assert.deepEqual(found.filter((one) => !expected.test(one)), []);
});
