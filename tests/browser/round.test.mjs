// The day in the browser shell and at the office: the order, the load list on one page of paper, history, what was used.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";

import { violationsInBoth } from "./lib/axe.mjs";
import { launch, troubles } from "./lib/chromium.mjs";
import { Village } from "./lib/village.mjs";
import { english, rawKeys } from "./lib/words.mjs";

/** @type {Village} */ let village;
/** @type {import("playwright-core").Browser} */ let browser;
/** @type {import("playwright-core").Page} */ let page;
/** @type {string[]} */ let found;

before(async () => {
  [village, browser] = await Promise.all([Village.drawn(), launch()]);
  await village.startOffice();
  const shell = await village.startField();
  const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  context.setDefaultTimeout(20_000);
  page = await context.newPage();
  found = troubles(page);
  await page.goto(shell);
  await page.getByRole("button", { name: english("round-start", { site: "Ferry Inn" }) }).waitFor();
});

after(async () => {
  await browser?.close();
  await village?.end();
});

/** How many pages a PDF has. @param {Buffer} pdf */
const pages = (pdf) => (pdf.toString("latin1").match(/\/Type\s*\/Page[^s]/g) ?? []).length;

/** No key without words, and nothing that hinders. @param {import("playwright-core").Page} shown @param {string} [name] */
async function sound(shown, name = "a page of the round") {
  assert.deepEqual(rawKeys(await shown.locator("main").innerText()), []);
  assert.deepEqual(await violationsInBoth(shown, name), []);
}

/** @param {string} key */
async function choose(key) {
  await page.getByRole("button", { name: english("shell-menu"), exact: true }).click();
  await page.getByRole("dialog").getByRole("button", { name: english(key), exact: true }).click();
  await page.locator("h1", { hasText: english(key) }).waitFor();
}

test("the round says what is due, and what is left of cover", async () => {
  const text = await page.locator("main").innerText();
  assert.match(text, /Due 14 days ago, cover ends in 16\./);
  assert.match(text, /“Electrical work on water heaters” holds until/);
  await sound(page);
});

test("the load list of five visits prints on one page", async () => {
  await page.getByRole("button", { name: english("round-to-load") }).click();
  await page.getByRole("region", { name: english("load-acids") }).waitFor();
  for (const key of ["load-alkalis", "load-parts", "load-gear", "load-instruments"]) {
    assert.equal(await page.getByRole("region", { name: english(key), exact: true }).count(), 1, key);
  }
  await sound(page);
  for (const format of ["A4", "Letter"]) {
    assert.equal(pages(await page.pdf({ format })), 1, format);
  }
  await page.getByRole("button", { name: english("back-to-round") }).click();
});

test("history and what was used are there without a word from the office", async () => {
  await page.getByRole("button", { name: english("round-start", { site: "Mill House" }) }).click();
  await page.locator(".unit-letter").waitFor();
  await choose("menu-history");
  assert.match(await page.locator("main").innerText(), /falls/);
  assert.ok((await page.locator("figure.chart").count()) >= 1);
  await sound(page);
  await choose("menu-used");
  const time = page.locator('[id="field-used_time"]');
  await time.fill("95");
  await time.press("Enter");
  await page.getByText(english("used-corrected", { amount: "95\u00a0min" })).waitFor();
  await sound(page);
});

test("the office's day shows the same, and its load list is a page of its own", async () => {
  const clerk = await (await browser.newContext({ viewport: { width: 1280, height: 900 } })).newPage();
  await clerk.goto(await village.newLink());
  await clerk.goto(`${village.officeAddress}/round`);
  assert.match(await clerk.locator("main").innerText(), /Due 14 days ago, cover ends in 16\./);
  await sound(clerk);
  const all = pages(await clerk.pdf({ format: "A4" }));
  await clerk.evaluate(() => document.querySelector(".load")?.remove());
  assert.equal(all - pages(await clerk.pdf({ format: "A4" })), 1);
});

test("nothing went wrong on the way", () => assert.deepEqual(found, []));
