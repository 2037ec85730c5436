// What goes wrong in a real day, in the browser shell: bad input, bad files, a second window, a kill, a reload.

import assert from "node:assert/strict";
import path from "node:path";
import { after, before, test } from "node:test";

import { violationsInBoth } from "./lib/axe.mjs";
import { launch, troubles } from "./lib/chromium.mjs";
import { makePhotos } from "./lib/photos.mjs";
import { chained, officeEvents } from "./lib/record.mjs";
import { rows } from "./lib/rows.mjs";
import { allWords } from "./lib/screen.mjs";
import { Technician } from "./lib/technician.mjs";
import { Village } from "./lib/village.mjs";
import { english, fill, rawKeys, words } from "./lib/words.mjs";

/** @type {Village} */ let village;
/** @type {import("playwright-core").Browser} */ let browser;
/** @type {import("playwright-core").BrowserContext} */ let context;
/** @type {import("playwright-core").Page} */ let page;
/** @type {Technician} */ let technician;
/** @type {string} */ let shell;
/** @type {string[]} */ let found;
/** What the page said of the battery, which is a stand-in here. @type {(number | null)[]} */ const charges = [];

before(async () => {
  [village, browser] = await Promise.all([Village.drawn(), launch()]);
  await village.startOffice();
  shell = await village.startField();
  // A tablet's wide page, and the place is not allowed: that must be no hindrance.
  context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
  context.setDefaultTimeout(20_000);
  page = await context.newPage();
  found = troubles(page);
  page.on("request", (request) => void (request.url().endsWith("/door/charge") && charges.push(request.postDataJSON().percent)));
  await page.addInitScript(`navigator.getBattery = async () => window.battery = Object.assign(new EventTarget(), { level: 0.08, charging: false })`);
  technician = new Technician(page, makePhotos(path.join(village.folder, "camera"), ["--count", "6", "--no-place"]));
  await page.goto(shell);
  await page.getByRole("button", { name: english("round-start", { site: "Mill House" }) }).click();
  await technician.settle();
});

after(async () => {
  await browser?.close();
  await village?.end();
});

/** A number's field by its reading. @param {string} reading */
const number = (reading) => page.locator(".field.number", { has: page.locator(`[id="field-read_${reading}"]`) });
/** @param {string} reading */
const input = (reading) => page.locator(`[id="field-read_${reading}"]`);

/** Types as before, but expects that it is not taken. @param {string} reading @param {string} text @param {string} problem */
async function refused(reading, text, problem) {
  await input(reading).fill(text);
  await input(reading).press("Enter");
  await technician.settle();
  const field = number(reading);
  assert.equal(await field.locator(".problem").innerText(), problem);
  assert.equal(await input(reading).getAttribute("aria-invalid"), "true");
  const about = (await input(reading).getAttribute("aria-describedby")) ?? "";
  const told = await page.locator(`[id="${about.split(" ").find((id) => id.endsWith("-problem"))}"]`).innerText();
  assert.equal(told, problem, "the message is not tied to its field for a screen reader");
  assert.equal(await input(reading).inputValue(), text, "what was typed is gone");
  assert.equal(await field.locator(".in-record").count(), 0);
}

/** The events of the visit as the office has them, their chain checked. The device's own file is the program's alone. */
async function log() {
  await page.locator(".outbox").getByText(english("outbox-empty")).waitFor({ timeout: 60_000 });
  const [row] = rows(path.join(village.officeFolder, "office.db"), "SELECT id FROM visit ORDER BY first_received_ms DESC LIMIT 1");
  return chained(officeEvents(village.officeFolder, row?.id), row?.id);
}

test("a battery that runs low is told to the core, and a charger too", async () => {
  assert.deepEqual(charges, [8]);
  await page.evaluate("battery.charging = true, battery.dispatchEvent(new Event('chargingchange'))");
  await technician.settle();
  assert.deepEqual(charges, [8, null]);
});

test("an empty file and a renamed document are refused with words, and the shot can be taken again", async () => {
  await technician.playUntil(async () => (await page.locator("dialog.photo-sheet[open]").count()) > 0);
  const refusals = /** @type {const} */ ([
    ["empty.jpg", Buffer.alloc(0), "photo-empty"],
    ["renamed.jpg", Buffer.from("%PDF-1.7\n1 0 obj << /Type /Catalog >> endobj\n%%EOF\n"), "photo-not-a-picture"],
  ]);
  for (const [name, buffer, why] of refusals) {
    await technician.file({ name, mimeType: "image/jpeg", buffer });
    const notice = page.locator(".notice");
    assert.equal(await notice.locator("h2").innerText(), english("photo-refused"));
    assert.equal(await notice.locator("p").innerText(), english(why));
    assert.equal(await page.locator(".shot.has").count(), 0);
    await page.locator(".shot").first().getByRole("button", { name: english("shot-take") }).click();
    await page.locator("dialog.photo-sheet[open] label.file").waitFor();
  }
  await technician.next();
  assert.equal(await page.locator(".shot.has").count(), 1);
  const photos = (await log()).filter(({ kind }) => kind === "photo-taken");
  assert.equal(photos.length, 1, "only the picture is in the record");
});

test("letters in a number show their message beside the field, and nothing else is lost", async () => {
  await technician.playUntil(async () => (await input("hours").count()) > 0);
  await refused("hours", "abc", english("problem-not-a-number", { typed: "abc" }));
  await technician.type("read_hours", "4321");
  await technician.settle();
  assert.equal(await number("hours").locator(".problem").count(), 0);
  assert.match(await number("hours").locator(".in-record").innerText(), /4\W?321/);
});

test("a killed program is found again by the open page, at the same step, with the half-typed text", async () => {
  const title = await technician.title();
  const serial = page.locator("[id=field-read_serial]");
  await serial.pressSequentially("TW9-");
  await technician.settle();
  await serial.pressSequentially("204");
  await village.field?.kill9();
  await serial.pressSequentially("17");
  await page.locator(".notice").getByText(english("shell-lost")).waitFor();
  assert.equal(await serial.inputValue(), "TW9-20417");
  assert.deepEqual(await violationsInBoth(page, "the program is away"), []);

  assert.equal(await village.startField(), shell, "the page's address has changed");
  await page.locator(".notice").waitFor({ state: "detached" });
  await technician.settle();
  assert.equal(await technician.title(), title);
  assert.equal(await serial.inputValue(), "TW9-20417");
  // And it is not only in the page: another load of it has it from the program.
  await page.reload();
  await serial.waitFor();
  assert.equal(await technician.title(), title);
  assert.equal(await serial.inputValue(), "TW9-20417");
});

test("a second window says so in the first, and each can take over", async () => {
  const second = await context.newPage();
  await second.goto(shell);
  await second.locator("[id=field-read_serial]").waitFor();
  await page.bringToFront();
  const state = page.locator("main.state h1");
  await state.waitFor();
  assert.equal(await state.innerText(), english("shell-elsewhere"));
  assert.deepEqual(await violationsInBoth(page, "open elsewhere"), []);
  await page.getByRole("button", { name: english("shell-use-this-window") }).click();
  await page.locator("[id=field-read_serial]").waitFor();
  await second.bringToFront();
  await second.locator("main.state").waitFor();
  await second.close();
});

test("a reload in a running waiting time keeps it", async () => {
  await page.bringToFront();
  await technician.playUntil(async () => (await page.locator(".dwell-running").count()) > 0);
  const seconds = async () => {
    const [minutes = 0, rest = 0] = (await page.locator(".clock .time").innerText()).split(":").map(Number);
    return minutes * 60 + rest;
  };
  const title = await technician.title();
  const before = await seconds();
  const since = Date.now();
  await page.reload();
  await page.locator(".dwell-running").waitFor();
  const gone = (Date.now() - since) / 1000;
  const left = await seconds();
  assert.ok(left <= before && left >= before - gone - 2, `${before} s before, ${left} s after, ${gone} s later`);
  assert.equal(await technician.title(), title);
});

test("a kill in a running waiting time lets it run on", async () => {
  const until = () => page.locator(".limits dd").first().innerText();
  const before = await until();
  await village.field?.kill9();
  await page.locator(".notice").getByText(english("shell-lost")).waitFor();
  await village.startField();
  await page.locator(".notice").waitFor({ state: "detached" });
  await technician.settle();
  assert.equal(await page.locator(".dwell-running").count(), 1);
  assert.equal(await until(), before);
});

test("an absurd temperature is refused, an unusual one asked back, and it reaches an office that was away", async () => {
  await village.office?.kill9();
  await technician.playUntil(async () => (await input("air-on-found").count()) > 0);
  // The bounds are the pack's: -40 to 60 °C, usual -7 to 43 °C.
  const places = { least: "−40\u00a0°C", most: "60\u00a0°C" };
  await refused("air-on-found", "180", english("problem-impossible", places));
  await input("air-on-found").fill("-9,5");
  await input("air-on-found").press("Enter");
  await technician.settle();
  const question = number("air-on-found").locator(".question");
  assert.equal(await question.locator("p").innerText(), english("question-unusual", { from: "−7\u00a0°C", to: "43\u00a0°C" }));
  await question.getByRole("button", { name: english("confirm-unusual") }).click();
  await technician.settle();
  await village.startOffice();
  const taken = (await log()).filter(({ reading }) => reading === "air-on-found");
  assert.deepEqual(taken.map(({ value, typed, unusual }) => ({ value, typed, unusual })), [{ value: "-9.5", typed: "-9,5", unusual: true }]);
});

test("in Spanish every screen is in Spanish, with no key in place of its words", async () => {
  const spanish = words("es");
  await technician.goTo(english("menu-settings"));
  await page.getByRole("checkbox", { name: english("language-es") }).click();
  await page.locator("html[lang=es]").waitFor();
  await technician.settle();
  const seen = /** @type {string[]} */ ([]);
  const inspect = async (/** @type {string} */ place) => {
    const text = await page.evaluate(allWords);
    seen.push(...rawKeys(text).map((key) => `${place}: ${key}`));
    // Words of the shell itself and of the core.
    for (const key of ["shell-to-content", "outbox-label"]) assert.ok(text.includes(fill(spanish, key)), `${place}: ${text}`);
  };
  await inspect("settings");
  await page.getByRole("button", { name: fill(spanish, "back"), exact: true }).click();
  await technician.settle();
  await inspect("now");
  assert.equal(await technician.title(), fill(spanish, "phase-as-found"));
  await page.locator(".step-title").getByText(fill(spanish, "step-read-found")).waitFor();
  assert.deepEqual(await violationsInBoth(page, "now, in Spanish"), []);
  for (const place of ["phases", "photographs", "readings", "findings", "leaving", "emergency", "break-off", "outbox", "procedures", "round"]) {
    await technician.goTo(fill(spanish, `menu-${place}`));
    await inspect(place);
    const title = place === "break-off" ? "ask-break-off" : `menu-${place}`;
    assert.equal(await technician.title(), fill(spanish, title));
  }
  assert.deepEqual(seen, []);
});

test("the page had no errors but those of the kills and of the second window", () => {
  const expected = /net::ERR_CONNECTION_REFUSED|net::ERR_CONNECTION_RESET|net::ERR_EMPTY_RESPONSE|net::ERR_SOCKET_NOT_CONNECTED|status of 409/;
  assert.deepEqual(found.filter((one) => !expected.test(one)), []);
  assert.ok(found.some((one) => /ERR_CONNECTION/.test(one)), "the kill was not noticed: does the check look at the page?");
});
