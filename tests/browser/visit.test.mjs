// A whole visit through the browser shell, with the office away from the second step to the seal; then what the office has.

import assert from "node:assert/strict";
import { cpSync, readFileSync, readdirSync, writeFileSync } from "node:fs";
import path from "node:path";
import { after, before, test } from "node:test";

import { violationsInBoth } from "./lib/axe.mjs";
import { launch, troubles } from "./lib/chromium.mjs";
import { ROOT } from "./lib/coilside.mjs";
import { makePhotos } from "./lib/photos.mjs";
import { chained, deviceEvents, kindsOf, officeEvents, original, sha256 } from "./lib/record.mjs";
import { rows } from "./lib/rows.mjs";
import { allWords } from "./lib/screen.mjs";
import { Technician } from "./lib/technician.mjs";
import { SITE, Village } from "./lib/village.mjs";
import { english, rawKeys } from "./lib/words.mjs";

const PHOTOS = 24; // more than the pack asks for; the issue asks for 10 at least
const PHOTOS_LEAST = 10;
/** How long one thing may take on a crowded machine. */
const TIMEOUT_MS = 20_000;
const PHONE = { width: 390, height: 844 };
const FINDING = "Drain hose kinked behind the casing. Straightened.";
const CUSTOMER = "Ada Fenn";
/** Two strokes, in parts of the box. @type {[number, number][][]} */
const STROKES = [
  [[0.1, 0.7], [0.2, 0.2], [0.3, 0.8], [0.4, 0.3], [0.5, 0.7]],
  [[0.45, 0.8], [0.9, 0.75]],
];
/** The core flags a camera's clock that differs by more than this: `flag-time-differs` says ten minutes. */
const TIME_DIFFERS_MS = 10 * 60_000;
const SCREENS = ["now", "phases", "photographs", "readings", "findings", "leaving", "emergency", "break-off", "outbox", "procedures", "settings", "round"];

/** @type {Village} */ let village;
/** @type {import("playwright-core").Browser} */ let browser;
/** @type {import("playwright-core").BrowserContext} */ let clerk;
/** @type {Technician} */ let technician;
/** @type {string} */ let visit;
/** @type {any[]} */ let events = [];
const axe = /** @type {string[]} */ ([]);
const untranslated = /** @type {string[]} */ ([]);
/** What the pages of each kind did that they should not. @type {Map<string, string[]>} */
const found = new Map();

before(async () => {
  [village, browser] = await Promise.all([Village.drawn(), launch()]);
  await village.startOffice();
  const shell = await village.startField();
  const context = await browser.newContext({
    viewport: PHONE,
    hasTouch: true,
    permissions: ["geolocation"],
    geolocation: { ...SITE, accuracy: 6 },
  });
  const place = [`--latitude=${SITE.latitude}`, `--longitude=${SITE.longitude}`, "--offset=+00:00"];
  const now = new Date().toISOString().slice(0, 19);
  const photos = makePhotos(path.join(village.folder, "camera"), ["--count", String(PHOTOS), "--time", now, "--step-s", "1", ...place]);
  photos.unshift(...photos.splice(-1)); // the large one first, so that it is used
  context.setDefaultTimeout(TIMEOUT_MS);
  const page = await context.newPage();
  found.set("shell", troubles(page));
  technician = new Technician(page, photos);
  await page.goto(shell);
  clerk = await browser.newContext({ viewport: { width: 1280, height: 900 } });
  clerk.setDefaultTimeout(TIMEOUT_MS);
});

after(async () => {
  await browser?.close();
  await village?.end();
});

/** Axe in both schemes, and no key in place of its words. @param {string} name */
async function inspect(name) {
  const { page } = technician;
  axe.push(...(await violationsInBoth(page, name)));
  untranslated.push(...rawKeys(await page.evaluate(allWords)).map((key) => `${name}: ${key}`));
}

test("the round shows the visit that is due", async () => {
  const { page } = technician;
  const start = page.getByRole("button", { name: english("round-start", { site: "Mill House" }) });
  await start.waitFor();
  await inspect("round");
  await start.click();
  await technician.settle();
  assert.equal(await page.locator("h1").innerText(), english("phase-arrive"));
});

test("a technician does the whole visit while the office is away", async () => {
  const { page } = technician;
  await inspect("now");
  const done = page.locator(".progress-text");
  await technician.playUntil(async () => !(await done.innerText()).startsWith("0 "));
  const office = page.locator(".outbox");
  await office.getByText(english("outbox-empty")).waitFor({ timeout: 20_000 });
  await village.office?.kill9();

  let menuSeen = false;
  let photoSeen = false;
  let dwellSeen = false;
  let resultsSeen = false;
  await technician.playUntil(async () => {
    if (!photoSeen && (await page.locator("dialog.photo-sheet[open] label.file").count())) {
      photoSeen = true;
      await inspect("photograph dialog");
    }
    if (!dwellSeen && (await page.locator(".dwell-running").count())) {
      dwellSeen = true;
      const clock = await page.locator(".clock").boundingBox();
      const foot = await page.locator(".foot").boundingBox();
      assert.ok(clock && foot && clock.y >= 0 && clock.y + clock.height <= foot.y, "the clock is not in sight after the start");
      await inspect("waiting time");
    }
    // With acid in the loop there is most to see on every screen.
    if (!menuSeen && (await page.locator(".strip").getByText(english("fact-loop-acid")).count())) {
      menuSeen = true;
      await lookAtEveryScreen();
    }
    if (!resultsSeen && (await page.locator(".notice").getByText(english("result-notice-left")).count())) {
      resultsSeen = true;
      await lookAtTheResults();
    }
    return (await technician.title()) === english("menu-leaving");
  });
  assert.ok(menuSeen && photoSeen && dwellSeen && resultsSeen, "the visit never came to a photograph, a waiting time, acid in the loop or results");
  assert.equal(await page.locator("main").getByText(english("leaving-complete")).count(), 1, await technician.where());
  await inspect("leaving, complete");

  await customerSigns();
  await technician.playUntil(async () => (await technician.title()) === english("sealed-title"));
  await page.locator("main").getByText(`Shown to ${CUSTOMER}, signed on the spot`).waitFor();
  await page.locator("main").getByText(english("sealed-waiting")).waitFor();
  assert.match(await office.innerText(), /\d+/, "the outbox does not say how many photographs wait");
  await inspect("sealed");
  assert.ok(technician.taken.length >= PHOTOS_LEAST, `only ${technician.taken.length} photographs were asked for`);
});

/** Before and after beside each other: what is drawn is said too, and a bar with its doubt stays inside of its track. */
async function lookAtTheResults() {
  const { page } = technician;
  await page.getByRole("button", { name: english("result-to-all") }).click();
  await technician.settle();
  const charts = page.locator(".chart");
  assert.equal(await charts.count(), 2, await technician.where());
  for (const chart of await charts.all()) {
    const said = (await chart.ariaSnapshot()).replace(/\u00a0/g, " ");
    for (const stage of ["column-found", "column-left"]) {
      assert.match(said, new RegExp(`${english(stage)} \\d+(\\.\\d+)? ± \\d`), "a screen reader is not told what the chart shows");
    }
    for (const row of await chart.locator(".bar-row").all()) {
      const [track, length, doubt] = await Promise.all([".track", ".length", ".doubt"].map((part) => row.locator(part).boundingBox()));
      assert.ok(track && length && doubt, "a bar, its track or its doubt is not drawn");
      const end = length.x + length.width;
      assert.ok(doubt.x < end && end < doubt.x + doubt.width, "the doubt does not lie about the bar's end");
      assert.ok(doubt.x >= track.x - 1 && doubt.x + doubt.width <= track.x + track.width + 1, "the doubt lies outside of its track");
    }
  }
  await inspect("results");
  await page.getByRole("button", { name: english("result-to-details") }).click();
  await technician.settle();
  assert.equal(await technician.title(), english("details-title"));
  await inspect("details");
  await page.getByRole("button", { name: english("details-back") }).click();
  await technician.settle();
  await page.getByRole("button", { name: english("back-to-now") }).click();
  await technician.settle();
}

/** How many points of the canvas are drawn on. @param {import("playwright-core").Locator} canvas */
const inked = (canvas) =>
  canvas.evaluate((/** @type {HTMLCanvasElement} */ each) => {
    const { data } = each.getContext("2d")?.getImageData(0, 0, each.width, each.height) ?? { data: [] };
    return data.filter((_, at) => at % 4 === 3 && data[at] > 0).length;
  });

/** The customer is there, types a name and draws with the mouse; a reload in between takes nothing away. */
async function customerSigns() {
  const { page } = technician;
  const canvas = page.locator(".ink canvas");
  assert.equal(await canvas.count(), 0, "nobody said that the customer is there");
  await page.getByRole("button", { name: english("customer-present") }).click();
  await technician.settle();
  await inspect("customer");
  await page.locator("[id=field-customer-name]").pressSequentially(CUSTOMER);
  assert.equal(await inked(canvas), 0);
  const scrolled = () => page.evaluate(() => scrollY);
  await canvas.scrollIntoViewIfNeeded();
  const before = await scrolled();
  await technician.draw(canvas, STROKES);
  assert.equal(await scrolled(), before, "the page moved while somebody drew");
  const drawn = await inked(canvas);
  assert.ok(drawn > 500, `only ${drawn} points are drawn on`);
  const [width, shown, fine] = await canvas.evaluate((/** @type {HTMLCanvasElement} */ each) => [each.width, each.getBoundingClientRect().width, devicePixelRatio]);
  assert.equal(width, Math.round(shown * fine), "the canvas is not as fine as the screen");
  for (const button of await page.locator(".ink button").all()) {
    const box = await button.boundingBox();
    assert.ok(box && box.height >= 48 && box.width >= 48, `${await button.innerText()} is smaller than 48 px`);
  }
  await page.reload();
  await canvas.waitFor();
  await technician.settle();
  assert.ok(Math.abs((await inked(canvas)) - drawn) < drawn / 10, "what was half drawn did not survive a reload");
  assert.equal(await page.locator("[id=field-customer-name]").inputValue(), CUSTOMER);
  // Cleared and drawn again.
  await page.getByRole("button", { name: english("shell-ink-clear"), exact: true }).click();
  await technician.settle();
  assert.equal(await inked(canvas), 0);
  await technician.draw(canvas, STROKES);
  await page.getByRole("button", { name: english("customer-sign"), exact: true }).click();
  await technician.settle();
  await page.locator(".ink .in-record").getByText(`Shown to ${CUSTOMER}, signed on the spot`).waitFor();
  await page.reload();
  await page.locator(".ink .in-record").waitFor();
  await technician.settle();
  assert.ok(Math.abs((await inked(canvas)) - drawn) < drawn / 5, "what stands in the record is not shown");
  await inspect("customer, signed");
}

/** Goes to each screen by the menu; adds a finding on the way. */
async function lookAtEveryScreen() {
  const { page } = technician;
  await page.locator(".menu-key").click();
  await inspect("menu");
  await page.keyboard.press("Escape");
  for (const place of SCREENS) {
    await technician.goTo(english(`menu-${place}`));
    await inspect(place);
    if (place === "findings") {
      await page.locator("[id=field-finding]").pressSequentially(FINDING);
      await page.getByRole("button", { name: english("severity-soon") }).click();
      await page.getByRole("button", { name: english("finding-add") }).click();
      await technician.settle();
      await page.locator("main").getByText(FINDING).waitFor();
    }
    if (place === "phases") {
      await page.locator(".blocks").getByRole("button", { name: english("phase-exchanger") }).click();
      await technician.settle();
      await inspect("phase");
    }
  }
  await page.getByRole("button", { name: english("round-go-on", { site: "Mill House" }) }).click();
  await technician.settle();
}

test("when the office is back everything arrives", async () => {
  const { page } = technician;
  await village.startOffice();
  // By itself it would after a minute at most; trouble.test.mjs waits for that after a shorter outage.
  await technician.goTo(english("menu-outbox"));
  await page.getByRole("button", { name: english("outbox-send-now") }).click();
  await page.locator("main").getByText(english("outbox-all-safe")).waitFor({ timeout: 90_000 });
  await page.locator(".outbox").getByText(english("outbox-empty")).waitFor();
  await page.getByRole("button", { name: english("back-to-round") }).click();
  await page.getByRole("button", { name: /^Mill House .* at the office$/ }).click();
  await page.locator("main").getByText(english("sealed-safe")).waitFor();
  // The visit is over: the device is switched off.
  await page.close();
  await village.field?.kill9();
});

test("every event arrived once and in order, and the chain holds", () => {
  const sealed = rows(path.join(village.folder, "field/field.db"), "SELECT visit FROM seal");
  assert.equal(sealed.length, 1);
  visit = sealed[0]?.visit;
  const stored = officeEvents(village.officeFolder, visit);
  events = chained(stored, visit);
  const sent = deviceEvents(path.join(village.folder, "field"), visit);
  assert.deepEqual(stored.map(({ bytes }) => bytes), sent.map(({ bytes }) => bytes));
  assert.equal(events[0].kind, "visit-opened");
  assert.equal(events.at(-1).kind, "seal-prepared");
  assert.deepEqual(events.at(-1).missing, []);

  const office = path.join(village.officeFolder, "office.db");
  const [head] = rows(office, `SELECT next, head FROM visit WHERE id = '${visit}'`);
  assert.deepEqual(head, { next: events.length, head: sha256(Buffer.from(stored.at(-1)?.bytes ?? "", "hex")) });
  const [seal] = rows(office, `SELECT covers, last FROM seal WHERE visit = '${visit}'`);
  assert.deepEqual(seal, { covers: events.length, last: head?.head });
  assert.deepEqual(rows(office, "SELECT * FROM branch"), []);

  const of = (/** @type {string} */ kind) => events.filter((event) => event.kind === kind);
  const steps = of("step-done").map(({ step }) => step);
  assert.equal(new Set(steps).size, steps.length, "a step stands twice");
  assert.equal(of("condition-set").length, technician.chosen);
  assert.equal(of("step-started").length, technician.waitsSkipped);
  assert.deepEqual(of("finding-added").map(({ text, severity }) => ({ text, severity })), [{ text: FINDING, severity: "soon" }]);
  const places = of("place-fixed").map(({ latitude, longitude }) => [Number(latitude), Number(longitude)]);
  assert.deepEqual(places, [[SITE.latitude, SITE.longitude]]);
});

test("the record holds what every shell's scripted visit comes to, event kind by event kind", () => {
  const file = path.join(ROOT, "tests/visits/kinds.txt");
  const kinds = `${kindsOf(events).join("\n")}\n`;
  if (process.env.UPDATE_KINDS) writeFileSync(file, kinds);
  assert.equal(kinds, readFileSync(file, "utf8"), "another order of things; the phones' visits are held to the same file");
});

test("every reading that was typed arrived once", () => {
  const typed = [...technician.typed].filter(([field]) => field.startsWith("read_"));
  assert.ok(typed.length >= 14, `only ${typed.length} readings were asked for`);
  const arrived = events.filter(({ kind }) => kind === "reading-taken");
  assert.deepEqual(
    arrived.map(({ reading, typed: text }) => [`read_${reading}`, text]).sort(),
    typed.sort(),
  );
  for (const { reading, typed: text, value } of arrived) {
    const number = Number(text.replace(",", "."));
    if (!Number.isNaN(number)) assert.equal(Number(value), number, reading);
  }
  const settings = events.filter(({ kind }) => kind === "excursion-opened" || kind === "excursion-home");
  for (const { excursion, home, away, shows } of settings) {
    if (home !== undefined) assert.deepEqual([home, away], [technician.typed.get(`home_${excursion}`), technician.typed.get(`away_${excursion}`)]);
    else assert.equal(shows, technician.typed.get(`back_${excursion}`));
  }
  assert.equal(settings.length, 4, "two settings were changed and brought home");
});

test("every photograph arrived once, to the byte, with what its camera said", () => {
  const arrived = events.filter(({ kind }) => kind === "photo-taken");
  assert.deepEqual(
    arrived.map(({ digest }) => digest),
    technician.taken.map(({ photo }) => photo.sha256),
  );
  technician.taken.forEach(({ title, photo }, at) => {
    const { slot, bytes, media, facts, flags, time } = arrived[at];
    assert.equal(original(village.officeFolder, photo.sha256), photo.bytes);
    assert.equal(sha256(readFileSync(photo.file)), photo.sha256);
    assert.deepEqual([title, bytes, media], [english(`shot-${slot}`), photo.bytes, "image/jpeg"]);
    const { exif } = photo;
    const place = `${Number(exif.latitude).toFixed(5)} ${Number(exif.longitude).toFixed(5)}`;
    const { look, at_site, ...camera_facts } = facts;
    assert.equal(at_site.verdict, "at-site");
    assert.match(look.likeness, /^[0-9a-f]{128}$/);
    assert.deepEqual(camera_facts, {
      width: photo.stored_width,
      height: photo.stored_height,
      orientation: exif.orientation,
      taken: exif.date_time_original,
      offset: exif.offset_time_original,
      exif_place: place,
      phone_place: `${SITE.latitude.toFixed(5)} ${SITE.longitude.toFixed(5)} 6`,
    });
    // The rehearsal's leaps carry the clock away from the camera's: that must show, and must not stop the work.
    const camera = Date.parse(`${String(exif.date_time_original).replace(/^(\d+):(\d+):(\d+) /, "$1-$2-$3T")}${exif.offset_time_original}`);
    const differs = Math.abs(time.utc_ms - camera) > TIME_DIFFERS_MS;
    assert.deepEqual(flags, differs ? ["time-differs"] : [], `${slot}: ${time.utc_ms - camera} ms`);
  });
  const office = path.join(village.officeFolder, "office.db");
  const kept = rows(office, `SELECT digest, length FROM photo WHERE visit = '${visit}' AND safe_ms IS NOT NULL AND media LIKE 'image/%' ORDER BY digest`);
  const made = technician.taken.map(({ photo }) => ({ digest: photo.sha256, length: photo.bytes }));
  assert.deepEqual(kept, made.sort((a, b) => (a.digest < b.digest ? -1 : 1)));
  assert.deepEqual(readdirSync(path.join(village.officeFolder, "parts")), [], "parts of photographs are left over");
  assert.deepEqual(readdirSync(path.join(village.officeFolder, "aside")), [], "a photograph was set aside");
});

test("the customer's name and drawing arrived as a file that the event names, and no event names the customer", () => {
  const noted = events.filter(({ kind }) => kind === "customer-noted");
  assert.deepEqual(noted.map(({ present, shown }) => [present, typeof shown]), [[true, "undefined"], [true, "string"]]);
  const { shown: digest } = noted[1];
  const file = readFileSync(path.join(village.officeFolder, "photos", digest.slice(0, 2), digest));
  assert.equal(sha256(file), digest);
  const shown = JSON.parse(file.toString("utf8"));
  assert.equal(shown.name, CUSTOMER);
  assert.equal(shown.strokes.length, STROKES.length);
  STROKES.forEach((stroke, at) => {
    const ends = [stroke[0], stroke.at(-1)].map((end) => [(end?.[0] ?? 0) * shown.width, (end?.[1] ?? 0) * shown.height]);
    const kept = [shown.strokes[at][0], shown.strokes[at].at(-1)];
    // A pixel of the screen is some four parts of the box.
    kept.forEach((point, end) => assert.ok(Math.hypot(point[0] - (ends[end]?.[0] ?? 0), point[1] - (ends[end]?.[1] ?? 0)) < 12, `${point} is not ${ends[end]}`));
  });
  assert.ok(shown.strokes.flat().length < 60, "straight lines are kept point by point");
  assert.ok(!JSON.stringify(events).includes(CUSTOMER));
});

test("the office's pages show the visit, and pass axe-core in light and dark", async () => {
  const page = await clerk.newPage();
  found.set("office", troubles(page));
  await page.goto(await village.newLink());
  const row = page.locator(".visits tbody tr", { has: page.locator(`a[href="/visits/${visit}"]`) });
  await row.waitFor();
  assert.match(await row.innerText(), new RegExp(`Mill House[^]*${english("office-state-complete")}`));
  assert.match(await row.locator(".photographs").innerText(), new RegExp(`\\b${technician.taken.length}\\b`));
  const violated = await violationsInBoth(page, "office, list");

  await row.locator(`a[href="/visits/${visit}"]`).click();
  await page.locator("h1").getByText("Mill House").waitFor();
  const text = (await page.locator("main").innerText()).replace(/\u00a0/g, " ");
  const photos = String(technician.taken.length);
  for (const words of [
    english("office-chain-holds"),
    english("office-chain-holds.text", { n: String(events.length) }),
    english("office-seal-holds"),
    english("office-photos-of", { here: photos, all: photos }),
    english("leaving-complete"),
    english("office-customer-matches"),
    `Shown to ${CUSTOMER}, signed on the spot`,
    FINDING,
  ]) {
    assert.ok(text.includes(words), `the visit's page does not say: ${words}`);
  }
  const cells = (await page.locator("main table td").allInnerTexts()).map((cell) => cell.replace(/\u00a0/g, " ").trim());
  for (const [field, typed] of technician.typed) {
    const shown = typed.replace(",", ".");
    const there = cells.some((cell) => ` ${cell} `.includes(` ${shown} `));
    assert.ok(there, `the visit's page does not show ${field}: ${typed}\n${cells.join(" | ")}`);
  }
  const heat = page.getByRole("img", { name: new RegExp(`^${english("result-heat")}\\. ${english("column-found")}: \\d+\\s±`) });
  assert.equal(await heat.count(), 1, "no chart of heat before and after");
  for (const { photo } of technician.taken) {
    const link = page.locator(`a[href="/photos/${photo.sha256}/original"]`);
    assert.equal(await link.count(), 1, `the visit's page does not show ${photo.file} once`);
    const answer = await clerk.request.get(`${village.officeAddress}/photos/${photo.sha256}/original`);
    assert.equal(sha256(await answer.body()), photo.sha256);
  }
  violated.push(...(await violationsInBoth(page, "office, visit")));
  assert.deepEqual(violated, []);
});

test("the owner's summary opens without a sign-in and passes axe-core at WCAG 2.2 AA", async () => {
  const page = clerk.pages()[0];
  assert.ok(page);
  const address = await page.getByRole("link", { name: english("office-summary-open") }).getAttribute("href");
  const owner = await browser.newContext({ viewport: PHONE, locale: "en" });
  const phone = await owner.newPage();
  found.set("summary", troubles(phone));
  const answer = await phone.goto(village.officeAddress + address);
  assert.equal(answer?.status(), 200);
  assert.deepEqual(await owner.cookies(), [], "the owner's page sets no cookie");
  assert.equal(await phone.locator("h1").innerText(), english("summary-title"));
  const text = await phone.locator("main").innerText();
  for (const words of [english("summary-safe-yes"), english("summary-hot-yes"), FINDING]) assert.ok(text.includes(words), words);
  const pictures = phone.locator("figure img");
  assert.ok((await pictures.count()) >= 2, "the summary shows no photographs before and after");
  for (const picture of await pictures.all()) {
    await picture.scrollIntoViewIfNeeded();
    await phone.waitForFunction((image) => /** @type {HTMLImageElement} */ (image).naturalWidth > 0, await picture.elementHandle());
  }
  assert.ok(text.includes(english("summary-shown", { name: CUSTOMER })), "the summary does not say to whom it was shown");
  const drawing = phone.getByRole("img", { name: english("summary-shown-drawing", { name: CUSTOMER }) });
  assert.equal(await drawing.locator("path").count(), STROKES.length, "the drawing does not stand in the summary");
  assert.deepEqual(await violationsInBoth(phone, "summary"), []);

  const guess = await owner.request.get(`${village.officeAddress}/visits/${visit}`);
  assert.equal(guess.status(), 401, "the office's own pages need a sign-in");
});

test("every screen of the shell passes axe-core in light and dark", () => {
  assert.deepEqual(axe, []);
});

test("no key stands in place of its words", () => {
  assert.deepEqual(untranslated, []);
});

test("no page had errors or loaded anything from elsewhere", () => {
  assert.deepEqual(Object.fromEntries(found), { shell: [], office: [], summary: [] });
});

test("a changed byte, a lost event and a spoilt photograph would have been noticed", () => {
  const stored = officeEvents(village.officeFolder, visit);
  const changed = structuredClone(stored);
  const at = stored.length >> 1;
  const row = changed[at];
  assert.ok(row);
  row.bytes = Buffer.from(Buffer.from(row.bytes, "hex").toString("utf8").replace('"utc_ms":1', '"utc_ms":2')).toString("hex");
  assert.notEqual(row.bytes, stored[at]?.bytes);
  assert.throws(() => chained(changed, visit), /another hash of event/);
  delete row.hash;
  assert.throws(() => chained(changed, visit), new RegExp(`event ${at + 1} does not follow`));
  assert.throws(() => chained(stored.filter(({ seq }) => seq !== at), visit), /has number/);

  const copy = path.join(village.folder, "copy");
  cpSync(path.join(village.officeFolder, "photos"), path.join(copy, "photos"), { recursive: true });
  const digest = technician.taken[0]?.photo.sha256 ?? "";
  const file = path.join(copy, "photos", digest.slice(0, 2), digest);
  assert.equal(original(copy, digest), technician.taken[0]?.photo.bytes);
  const bytes = readFileSync(file);
  bytes[bytes.length >> 1] = (bytes[bytes.length >> 1] ?? 0) ^ 1;
  writeFileSync(file, bytes);
  assert.throws(() => original(copy, digest), /other bytes/);
  assert.throws(() => original(copy, "0".repeat(64)), /is not in the office/);
});
