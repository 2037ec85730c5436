// The summaries of target/summaries as an owner meets them: in Chromium on a telephone's screen, without script and by
// keyboard, checked by axe-core and html-validate.

import assert from "node:assert/strict";
import { readFileSync, readdirSync, rmSync, mkdirSync } from "node:fs";
import { createRequire } from "node:module";
import { after, before, test } from "node:test";

import { violationsInBoth } from "../browser/lib/axe.mjs";
import { launch, troubles } from "../browser/lib/chromium.mjs";

const FOLDER = new URL("../../target/summaries/", import.meta.url);
const NAMES = readdirSync(FOLDER).filter((name) => name.endsWith(".html"));
const PHONE = { width: 390, height: 844 };
const { HtmlValidate } = createRequire(new URL("../browser/package.json", import.meta.url))("html-validate");

/** @type {import("playwright-core").Browser} */
let browser;
before(async () => {
  browser = await launch();
  rmSync(new URL("png/", FOLDER), { recursive: true, force: true });
  mkdirSync(new URL("png/", FOLDER));
});
after(() => browser.close());

/** @param {string} name @param {object} [options] */
async function opened(name, options = {}) {
  const page = await (await browser.newContext({ viewport: PHONE, ...options })).newPage();
  const found = troubles(page);
  await page.goto(new URL(name, FOLDER).href);
  return { page, found: () => found.filter((line) => !line.includes("request to elsewhere: file:")) };
}

test("there are ten summaries", () => assert.equal(NAMES.length, 10));

for (const name of NAMES) {
  test(`${name} fits a telephone, passes axe-core at WCAG 2.2 AA in light and dark, and loads nothing`, async () => {
    const { page, found } = await opened(name);
    const wide = await page.evaluate(() => {
      const reaches = (element) => element.getBoundingClientRect().right > document.documentElement.clientWidth + 0.5;
      const shown = [...document.querySelectorAll("main *")].filter((element) => !element.closest(".hidden, .stage, svg"));
      return {
        page: document.documentElement.scrollWidth - document.documentElement.clientWidth,
        out: shown.filter(reaches).map((element) => `${element.tagName}.${element.className}`),
        cut: shown.filter((element) => element.scrollWidth > element.clientWidth + 1 && getComputedStyle(element).display !== "inline")
          .map((element) => `${element.tagName}.${element.className}: ${element.textContent?.slice(0, 40)}`),
      };
    });
    assert.deepEqual(wide, { page: 0, out: [], cut: [] });
    assert.deepEqual(await violationsInBoth(page, name), []);
    const small = await page.evaluate(() => [...document.querySelectorAll("p, li, dd, dt, h1, h2, h3, figcaption, label, a")]
      .filter((element) => parseFloat(getComputedStyle(element).fontSize) < 16).map((element) => element.textContent));
    assert.deepEqual(small, [], "words smaller than 16 px");
    await page.evaluate(() => Promise.all([...document.images].map((image) => image.decode())));
    await page.screenshot({ path: new URL(`png/${name}.png`, FOLDER).pathname, fullPage: true });
    assert.deepEqual(found(), []);
    await page.context().close();
  });

  test(`${name} is valid HTML (html-validate)`, async () => {
    const validate = new HtmlValidate({
      extends: ["html-validate:standard"],
      // A page that stands for itself has its one style sheet in it; maud writes no slash behind void elements.
      rules: { "require-sri": "off", "no-inline-style": "error", "long-title": "off" },
    });
    const report = await validate.validateString(readFileSync(new URL(name, FOLDER), "utf8"));
    const lines = report.results.flatMap(({ messages }) => messages.map(({ ruleId, message, line, column }) => `${line}:${column} ${ruleId}: ${message}`));
    assert.deepEqual(lines, []);
  });

  test(`${name} says in the browser what its model says, in that order`, async () => {
    const { page } = await opened(name);
    const { words } = JSON.parse(readFileSync(new URL(name.replace(".html", ".json"), FOLDER), "utf8"));
    const text = await page.evaluate(() => document.querySelector("main")?.textContent ?? "");
    // What only the page has: the places of the slider, its hint, the link to the calendar.
    const squeezed = text.replaceAll(/\s/g, "");
    let from = 0;
    for (const line of words) {
      const wanted = line.replaceAll(/\s/g, "");
      const at = squeezed.indexOf(wanted, from);
      assert.ok(at >= from, `'${line}' is missing or out of order`);
      from = at + wanted.length;
    }
    await page.context().close();
  });
}

test("the slider goes by keyboard, without any script", async () => {
  const { page } = await opened("01-add-on.html", { javaScriptEnabled: false });
  const cut = async () => {
    // The transition ends first.
    await page.waitForTimeout(400);
    return page.locator(".stage figure + figure").first().evaluate((element) => getComputedStyle(element).clipPath);
  };
  assert.equal(await cut(), "inset(0px 0px 0px 50%)");
  let presses = 0;
  while (!(await page.locator(".slider input").evaluateAll((all) => all.some((input) => input === document.activeElement)))) {
    await page.keyboard.press("Tab");
    assert.ok((presses += 1) < 10, "no slider is reached by Tab");
  }
  const outline = await page.locator(".track").first().evaluate((element) => getComputedStyle(element).outlineStyle);
  assert.equal(outline, "solid", "where the keyboard is does not show");
  await page.keyboard.press("ArrowRight");
  assert.equal(await cut(), "inset(0px 0px 0px 25%)");
  await page.keyboard.press("ArrowRight");
  assert.equal(await cut(), "inset(0px 0px 0px 0%)");
  for (let press = 0; press < 4; press += 1) await page.keyboard.press("ArrowLeft");
  assert.equal(await cut(), "inset(0px 0px 0px 100%)");
  await page.locator(".track label").nth(2).click();
  assert.equal(await cut(), "inset(0px 0px 0px 50%)");
  await page.context().close();
});

test("on paper both pictures stand side by side, and nothing that can only be pressed is left", async () => {
  const { page } = await opened("01-add-on.html");
  await page.emulateMedia({ media: "print" });
  const boxes = await page.locator(".stage").first().locator("img").evaluateAll((all) => all.map((img) => img.getBoundingClientRect().left));
  assert.equal(boxes.length, 2);
  assert.ok(boxes[1] > boxes[0] + 50, String(boxes));
  for (const pressed of [".track", ".calendar"]) assert.equal(await page.locator(pressed).first().isVisible(), false, pressed);
  await page.context().close();
});

for (const name of ["short", "long"]) {
  test(`the code of the office's page is whole on a telephone's screen, for codes.py to read (${name} address)`, async () => {
    for (const colorScheme of ["light", "dark"]) {
      const { page } = await opened(`../link-codes/${name}.html`, { colorScheme });
      const code = page.locator("svg.code");
      await code.scrollIntoViewIfNeeded();
      const box = await code.boundingBox();
      assert.ok(box && box.x >= 0 && box.x + box.width <= PHONE.width && Math.abs(box.width - box.height) < 1, JSON.stringify(box));
      await page.screenshot({ path: new URL(`../link-codes/${name}-${colorScheme}.png`, FOLDER).pathname });
      await page.context().close();
    }
  });
}

test("the calendar link carries the day of the next service", async () => {
  const { page } = await opened("01-add-on.html");
  const href = await page.locator(".calendar a").getAttribute("href");
  const text = Buffer.from(href.split(",")[1], "base64").toString();
  assert.match(text, /^BEGIN:VCALENDAR\r\n/);
  assert.match(text, /DTSTART;VALUE=DATE:20270504/);
  assert.ok(!text.includes("Mill Lane"));
  await page.context().close();
});
