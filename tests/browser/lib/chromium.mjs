// Debian's Chromium under playwright-core, with a page's troubles written down.

import { chromium } from "playwright-core";

const EXECUTABLE = "/usr/bin/chromium";

// No sandbox: the tests run as root in containers. The rest keeps the browser from calling anyone by itself.
const FLAGS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/** @returns {Promise<import("playwright-core").Browser>} */
export function launch() {
  return chromium.launch({ executablePath: EXECUTABLE, args: FLAGS });
}

/**
 * Writes down what a page should not have: errors thrown, errors on the console, and requests that leave this machine.
 * Read the list at the end of a test; while the office is stopped on purpose, failed requests to it are to be expected.
 *
 * @param {import("playwright-core").Page} page
 * @returns {string[]} grows as things happen
 */
export function troubles(page) {
  /** @type {string[]} */
  const found = [];
  page.on("pageerror", (error) => found.push(`error thrown: ${error.message}`));
  page.on("console", (message) => {
    if (message.type() === "error") found.push(`console: ${message.text()} (${message.location().url})`);
  });
  page.on("request", (request) => {
    const url = new URL(request.url());
    const local = ["127.0.0.1", "localhost", "[::1]"].includes(url.hostname);
    if (!local && !["data:", "blob:"].includes(url.protocol)) found.push(`request to elsewhere: ${url}`);
  });
  return found;
}
