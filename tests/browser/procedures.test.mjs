// Procedures out of a folder, in a browser shell that runs: put in, read, broken, refused with file and line.

import assert from "node:assert/strict";
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { after, before, test } from "node:test";

import { violationsInBoth } from "./lib/axe.mjs";
import { launch, troubles } from "./lib/chromium.mjs";
import { ROOT, start } from "./lib/coilside.mjs";
import { english, fill, words } from "./lib/words.mjs";

const SMALL = path.join(ROOT, "core/tests/packs/small");

/** @type {string} */ let folder;
/** @type {string} */ let packs;
/** @type {import("./lib/coilside.mjs").Started} */ let field;
/** @type {import("playwright-core").Browser} */ let browser;
/** @type {import("playwright-core").Page} */ let page;
/** @type {string[]} */ let found;

before(async () => {
  folder = mkdtempSync(path.join(tmpdir(), "coilside-procedures-"));
  packs = mkdtempSync(path.join(tmpdir(), "coilside-packs-"));
  const args = ["field", "--folder", folder, "--packs", packs];
  [field, browser] = await Promise.all([start(args, { env: { LANG: "en_GB.UTF-8", LC_ALL: "" } }), launch()]);
  page = await browser.newPage({ viewport: { width: 390, height: 844 } });
  page.setDefaultTimeout(20_000);
  found = troubles(page);
  await page.goto(field.addresses[0]?.url ?? "");
});

after(async () => {
  await browser?.close();
  await field?.kill9();
  for (const made of [folder, packs]) rmSync(made, { recursive: true, force: true });
});

/** @param {string} key @param {Map<string, string>} [language] */
const button = (key, language = words("en")) => page.getByRole("button", { name: fill(language, key), exact: true });

/** Presses 'Read again' and waits until it was read. @param {number} refused @param {Map<string, string>} [language] */
async function readAgain(refused, language = words("en")) {
  await button("procedures-read", language).click();
  const told = fill(language, "procedures-were-read", { good: "\u0000", refused: String(refused) });
  await page.locator(".notice h2").getByText(new RegExp(told.replace(/[.*+?^${}()|[\]\\]/g, "\\$&").replace("\u0000", "\\d+"))).waitFor();
}

test("an empty folder leaves the procedures of the program", async () => {
  await page.locator(".menu-key").click();
  await button("menu-procedures").click();
  await page.locator("main h1, h1").getByText(english("menu-procedures")).first().waitFor();
  assert.ok((await page.locator("table tbody tr").count()) >= 1);
  assert.equal(await page.getByText("Fresh-air box").count(), 0);
  assert.deepEqual(await violationsInBoth(page, "procedures"), []);
});

test("a pack that is put into the folder is read without a new start", async () => {
  cpSync(SMALL, path.join(packs, "box"), { recursive: true });
  await readAgain(0);
  const row = page.locator("table tbody tr", { hasText: "Fresh-air box" });
  assert.match(await row.innerText(), /1\.0\.0/);
  assert.ok((await row.innerText()).includes(path.join(packs, "box")));
});

test("a broken one is refused with file, line and reason, in English and in Spanish", async () => {
  const file = path.join(packs, "box/pack.toml");
  const lines = readFileSync(file, "utf8").split("\n");
  const at = lines.findIndex((line) => line.startsWith("kind = "));
  lines[at] = 'kind = "neutrel"';
  writeFileSync(file, lines.join("\n"));
  await readAgain(1);
  const values = { field: "kind", value: "neutrel", near: "neutral", choices: "acid, alkali, hypochlorite, neutral" };
  for (const language of [words("en"), words("es")]) {
    const what = fill(language, "fault-choice-unknown-near", values);
    const remedy = fill(language, "fault-choice-unknown-near.do", values);
    await page.locator("main").getByText(`pack.toml:${at + 1}:8: ${what} ${remedy}`).waitFor();
    assert.equal(await page.locator("table tbody tr", { hasText: "Fresh-air box" }).count(), 0);
    assert.deepEqual(await violationsInBoth(page, "procedures, one refused"), []);
    if ((await page.locator("html").getAttribute("lang")) === "es") break;
    await page.locator(".menu-key").click();
    await button("menu-settings").click();
    await page.getByRole("checkbox", { name: english("language-es") }).click();
    await page.locator("html[lang=es]").waitFor();
    await page.locator(".menu-key").click();
    await button("menu-procedures", words("es")).click();
  }
});

test("the page had no errors", () => {
  assert.deepEqual(found, []);
});
