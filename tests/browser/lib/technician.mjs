// Drives the browser shell as a person would: looks at what the page offers, then clicks, types and chooses files.

import { mkdirSync } from "node:fs";
import path from "node:path";

import { answer, choice } from "./answers.mjs";
import { ROOT } from "./coilside.mjs";
import { look } from "./screen.mjs";

/** Longer than the page's own hold of 1.5 s. */
const HOLD_MS = 1900;
/** How long the page may be busy with one thing on a crowded machine. */
const PATIENCE_MS = 30_000;
const MOVES_MAX = 600;

/** @typedef {import("playwright-core").Page} Page */
/** @typedef {import("./photos.mjs").Photo} Photo */

export class Technician {
  /** @param {Page} page @param {Photo[]} photos given out one after another */
  constructor(page, photos) {
    this.page = page;
    this.photos = [...photos];
    /** What was typed, by field. @type {Map<string, string>} */
    this.typed = new Map();
    /** Which photograph was taken for which title. @type {{ title: string, photo: Photo }[]} */
    this.taken = [];
    /** How many questions were answered by choosing. */
    this.chosen = 0;
    this.waitsSkipped = 0;
    /** Alarms that should ring and were not stopped yet. */
    this.alarmsDue = 0;
    this.calls = 0;
    const calls = (/** @type {number} */ change) => (/** @type {import("playwright-core").Request} */ request) => {
      if (request.url().includes("/door/")) this.calls += change;
    };
    page.on("request", calls(1));
    page.on("requestfinished", calls(-1));
    page.on("requestfailed", calls(-1));
  }

  /** Waits until nothing that was pressed or typed is still on its way. */
  async settle() {
    const until = Date.now() + PATIENCE_MS;
    for (let calm = 0; calm < 2; ) {
      const busy = await this.page.evaluate(
        () => new Promise((done) => setTimeout(() => done(document.querySelector("[aria-busy=true]") !== null), 15)),
      );
      calm = busy || this.calls > 0 ? 0 : calm + 1;
      if (Date.now() > until) throw new Error(`the page is still busy after ${PATIENCE_MS} ms: ${await this.where()}`);
    }
  }

  /** Does the next thing. @returns {Promise<import("./screen.mjs").Move>} what it was */
  async next() {
    const move = await this.page.evaluate(look);
    const { page } = this;
    switch (move.do) {
      case "press":
        await this.press(move.at);
        break;
      case "hold":
        await this.hold(page.locator(move.at));
        break;
      case "choose": {
        const which = choice(move.field, move.options.map(({ label }) => label));
        await page.locator(move.options[which]?.at ?? "").click();
        this.chosen += 1;
        break;
      }
      case "type":
        await this.type(move.field, answer(move.field));
        break;
      case "photograph":
        await this.photograph(move.title);
        break;
      case "skip-wait":
        await page.locator(move.at).click();
        // Its time is up now: the alarm must ring.
        await page.locator("dialog.alarm-sheet[open]").waitFor({ timeout: PATIENCE_MS });
        this.waitsSkipped += 1;
        this.alarmsDue += 1;
        break;
      case "stop-alarm":
        if (this.alarmsDue === 0) throw new Error(`an alarm rings for nothing: ${move.what}`);
        this.alarmsDue -= 1;
        await page.locator(move.at).click();
        break;
      case "stuck":
        throw new Error(`the visit does not go on: ${move.why}\n${await this.where()}`);
    }
    await this.settle();
    return move;
  }

  /**
   * Seen once on a crowded machine: the headless browser drew no frame for twenty seconds, and a click waits for two. A
   * picture makes it draw one; a page that is truly stuck is so the second time too.
   * @param {string} at
   */
  async press(at) {
    try {
      await this.page.locator(at).click();
    } catch (reason) {
      console.error(`pressed again after ${reason}\n${await this.where()}`);
      await this.page.locator(at).click();
    }
  }

  /** @param {string} field as in the input's id @param {string} text */
  async type(field, text) {
    const input = this.page.locator(`[id="field-${field}"]`);
    await input.fill("");
    await input.pressSequentially(text);
    // Enter and Tab at once, as quick fingers do: it must count once.
    await input.press("Enter");
    await input.press("Tab");
    this.typed.set(field, text);
  }

  /** Chooses the next photograph in the file dialog. @param {string} title */
  async photograph(title) {
    const photo = this.photos.shift();
    if (!photo) throw new Error(`no photograph is left for '${title}'`);
    await this.file(photo.file);
    this.taken.push({ title, photo });
  }

  /** @param {string | { name: string, mimeType: string, buffer: Buffer }} file */
  async file(file) {
    const opened = this.page.waitForEvent("filechooser");
    await this.page.locator("dialog.photo-sheet label.file").click();
    await (await opened).setFiles(/** @type {string} */ (file));
    await this.settle();
  }

  /**
   * Draws with the mouse: each stroke from point to point, in parts of the box from its upper left corner.
   * @param {import("playwright-core").Locator} canvas @param {[number, number][][]} strokes
   */
  async draw(canvas, strokes) {
    await canvas.scrollIntoViewIfNeeded();
    const box = await canvas.boundingBox();
    if (!box) throw new Error(`there is nothing to draw on: ${await this.where()}`);
    for (const [first, ...rest] of strokes) {
      if (!first) continue;
      const at = (/** @type {[number, number]} */ [x, y]) => /** @type {[number, number]} */ ([box.x + x * box.width, box.y + y * box.height]);
      await this.page.mouse.move(...at(first));
      await this.page.mouse.down();
      for (const point of rest) await this.page.mouse.move(...at(point), { steps: 4 });
      await this.page.mouse.up();
    }
    await this.settle();
  }

  /** @param {import("playwright-core").Locator} button */
  async hold(button) {
    await button.hover();
    await this.page.mouse.down();
    await this.page.waitForTimeout(HOLD_MS);
    await this.page.mouse.up();
  }

  /**
   * Goes on until the page is as wanted.
   * @param {(move: import("./screen.mjs").Move | null) => Promise<boolean>} reached asked before the first move and after each
   */
  async playUntil(reached) {
    let last = "";
    let again = 0;
    for (let moves = 0, move = null; !(await reached(move)); moves += 1) {
      if (moves > MOVES_MAX) throw new Error(`no end after ${MOVES_MAX} moves: ${await this.where()}`);
      move = await this.next();
      const now = JSON.stringify(move);
      again = now === last ? again + 1 : 0;
      last = now;
      if (again > 2) throw new Error(`the same over and over: ${now}\n${await this.where()}`);
    }
  }

  /** Goes to a screen by the menu, on a small or a wide page. @param {string} label */
  async goTo(label) {
    const key = this.page.locator(".menu-key");
    const narrow = await key.isVisible();
    if (narrow) await key.click();
    await this.page.locator(narrow ? "dialog.menu-sheet[open] .ways" : ".rail").getByRole("button", { name: label, exact: true }).click();
    await this.settle();
  }

  /** @returns {Promise<string>} */
  title() {
    return this.page.locator("h1").innerText();
  }

  /** Where the page is, in words, with a picture beside the logs. */
  async where() {
    const logs = path.join(ROOT, "target/test-logs");
    mkdirSync(logs, { recursive: true });
    const picture = path.join(logs, `browser-${process.pid}-${Date.now()}.png`);
    await this.page.screenshot({ path: picture, fullPage: true }).catch(() => undefined);
    return `${await this.page.evaluate(() => document.body.innerText).catch(() => "(no page)")}\n(picture: ${picture})`;
  }
}
