// The visit of each other procedure, through the browser shell to the seal, in both languages, with no key in place of its
// words on any screen. The add-on heater's visit in English is in visit.test.mjs.

import assert from "node:assert/strict";
import path from "node:path";
import { after, before, test } from "node:test";
import { setTimeout as rest } from "node:timers/promises";

import { launch, troubles } from "./lib/chromium.mjs";
import { makePhotos } from "./lib/photos.mjs";
import { allWords } from "./lib/screen.mjs";
import { Technician } from "./lib/technician.mjs";
import { SITE, Village } from "./lib/village.mjs";
import { english, fill, rawKeys, words } from "./lib/words.mjs";

/** The demo's day without the mill house: `office/src/demo/round.rs`. */
const SITES = ["Quay Cottage", "Weir Bakery", "Weir School", "Ferry Inn"];
const PHOTOS = 40;
const TIMEOUT_MS = 20_000;
/** What a crowded machine takes to say whether an alarm is still wanted: until then nothing of it may be seen. */
const SLOW_MS = 1500;

/** @type {import("playwright-core").Browser} */ let browser;
/** @type {Village[]} */ const villages = [];

before(async () => {
  browser = await launch();
});

after(async () => {
  await browser?.close();
  for (const village of villages) await village.end();
});

/** @param {string} language */
async function arrive(language) {
  const village = await Village.drawn();
  villages.push(village);
  await village.startOffice();
  const context = await browser.newContext({
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    permissions: ["geolocation"],
    geolocation: { ...SITE, accuracy: 6 },
  });
  context.setDefaultTimeout(TIMEOUT_MS);
  const page = await context.newPage();
  const wrong = troubles(page);
  const technician = new Technician(page, []); // before the page opens, so that no call is missed
  await page.goto(await village.startField());
  await page.getByRole("button", { name: english("round-start", { site: "Mill House" }) }).waitFor();
  if (language !== "en") {
    await technician.goTo(english("menu-settings"));
    await page.getByRole("checkbox", { name: english("language-es") }).click();
    await technician.settle();
  }
  return { village, page, technician, wrong };
}

for (const language of ["en", "es"]) {
  test(`every other procedure's visit is done to its seal in the browser: ${language}`, async (t) => {
    const known = words(language);
    const { village, page, technician, wrong } = await arrive(language);
    // The mill house's own test is in English.
    const sites = language === "en" ? SITES : ["Mill House", ...SITES];
    if (language === "en") await page.route("**/door/open", (route) => rest(SLOW_MS).then(() => route.continue()));
    for (const site of sites) {
      if (site !== sites[0]) {
        await page.unroute("**/door/open");
        await page.reload();
        await page.locator("h1").waitFor();
        await technician.settle();
      }
      await t.test(`${site}, ${language}`, async () => {
        technician.photos = makePhotos(path.join(village.folder, `camera-${site}`), ["--count", String(PHOTOS), "--no-place"]);
        await technician.goTo(fill(known, "menu-round"));
        await page.getByRole("button", { name: fill(known, "round-start", { site }) }).click();
        await technician.settle();
        const keys = new Set();
        let screens = 0;
        let seen = "";
        await technician.playUntil(async () => {
          const text = await page.evaluate(allWords);
          if (text !== seen) {
            seen = text;
            screens += 1;
            for (const key of rawKeys(text)) keys.add(key);
          }
          return (await technician.title()) === fill(known, "sealed-title");
        });
        assert.deepEqual([...keys], [], "keys stand in place of words");
        assert.ok(screens > 60, `only ${screens} screens were seen`);
        assert.equal(await page.getAttribute("html", "lang"), language);
      });
    }
    assert.deepEqual(wrong, []);
  });
}
