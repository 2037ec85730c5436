// Takes the README's pictures from the running program into docs/. Not a test: run it by hand after `tests/run browser`
// has fetched and built what it needs, and look at each picture before it is committed. Needs pngquant (Debian has it).

import { execFileSync } from "node:child_process";
import { mkdirSync, statSync } from "node:fs";
import path from "node:path";

import { launch } from "./lib/chromium.mjs";
import { ROOT } from "./lib/coilside.mjs";
import { makePhotos } from "./lib/photos.mjs";
import { Technician } from "./lib/technician.mjs";
import { SITE, Village } from "./lib/village.mjs";
import { english } from "./lib/words.mjs";

const DOCS = path.join(ROOT, "docs");
const PHONE = { viewport: { width: 390, height: 844 }, deviceScaleFactor: 2, hasTouch: true };
const DESK = { viewport: { width: 1280, height: 900 }, deviceScaleFactor: 1 };
/** A reader of the README should not wait for a picture, bytes. */
const PICTURE_BYTES_MAX = 250_000;

/** @param {import("playwright-core").Page} page @param {string} name */
async function take(page, name) {
  mkdirSync(DOCS, { recursive: true });
  const file = path.join(DOCS, name);
  await page.evaluate(() => document.activeElement instanceof HTMLElement && document.activeElement.blur());
  await page.mouse.move(0, 0);
  await page.waitForTimeout(500); // pictures of photographs come a moment later
  await page.screenshot({ path: file });
  execFileSync("pngquant", ["--force", "--strip", "--quality=70-95", "--output", file, file]);
  const { size } = statSync(file);
  console.log(`${name}: ${size} bytes${size > PICTURE_BYTES_MAX ? `, more than ${PICTURE_BYTES_MAX}` : ""}`);
}

/** @param {Village} village @param {import("playwright-core").Browser} browser */
async function technicianAtWork(village, browser) {
  const context = await browser.newContext({ ...PHONE, permissions: ["geolocation"], geolocation: { ...SITE, accuracy: 6 } });
  const page = await context.newPage();
  const technician = new Technician(page, makePhotos(path.join(village.folder, "camera"), ["--count", "20", "--no-place"]));
  await page.goto(await village.startField());
  await page.getByRole("button", { name: english("round-start", { site: "Mill House" }) }).click();
  await technician.settle();
  let shown = false;
  await technician.playUntil(async () => {
    if (!shown && (await page.locator("[id=field-read_serial]").count())) {
      shown = true;
      await technician.type("read_serial", "TW9-20417");
      await technician.settle();
      await page.evaluate(() => scrollTo(0, 0));
      await take(page, "technician.png");
    }
    return (await page.locator(".dwell-running").count()) > 0 && (await page.locator(".strip").getByText(english("fact-loop-acid")).count()) > 0;
  });
  await page.waitForTimeout(7000); // a clock that runs
  await take(page, "acid-dwell.png");
  await context.close();
}

/** The visit of last year, as it lies in the demo's office. @param {Village} village @param {import("playwright-core").Browser} browser */
async function lastYear(village, browser) {
  const clerk = await browser.newContext(DESK);
  const page = await clerk.newPage();
  await page.goto(await village.newLink());
  await page.locator(".visits td.site a", { hasText: "Mill House" }).last().click();
  await page.locator(".pair img").first().waitFor();
  await page.waitForLoadState("networkidle");
  await take(page, "office-visit.png");
  const address = await page.getByRole("link", { name: english("office-summary-open") }).getAttribute("href");
  const owner = await browser.newContext(PHONE);
  const summary = await owner.newPage();
  await summary.goto(village.officeAddress + address);
  await take(summary, "summary.png");
  const tablet = await browser.newContext({ viewport: { width: 720, height: 900 } });
  const wide = await tablet.newPage();
  await wide.goto(village.officeAddress + address);
  const heading = wide.getByRole("heading", { name: english("office-before-after") });
  const toHeading = () => heading.evaluate((element) => scrollTo(0, element.getBoundingClientRect().top + scrollY - 16));
  await toHeading();
  for (const picture of await wide.locator(".pair img").all()) {
    await picture.evaluate((image) => ((image.loading = "eager"), image.decode()));
  }
  await toHeading(); // the pictures have pushed it away
  await take(wide, "summary-before-after.png");
}

const [village, browser] = await Promise.all([Village.drawn(), launch()]);
try {
  await village.startOffice();
  await lastYear(village, browser);
  await technicianAtWork(village, browser);
} finally {
  await browser.close();
  await village.end();
}
