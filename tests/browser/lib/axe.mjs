// axe-core on a page, at WCAG 2.2 level AA.

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

const SOURCE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

// axe-core marks each rule with the version and level that brought it; AA of 2.2 is all of these together.
const TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];

/**
 * @param {import("playwright-core").Page} page
 * @returns {Promise<string>} the violations as text for people, empty if there are none
 */
export async function violations(page) {
  await page.evaluate(SOURCE);
  const result = await page.evaluate((values) => globalThis.axe.run(document, { runOnly: { type: "tag", values } }), TAGS);
  if (result.passes.length === 0) {
    throw new Error(`axe-core found nothing to look at on ${page.url()}: is the page empty?`);
  }
  return result.violations.map(format).join("\n");
}

/**
 * The same in light and in dark.
 *
 * @param {import("playwright-core").Page} page
 * @param {string} name what is on the page, for people
 * @returns {Promise<string[]>} one text a violated scheme
 */
export async function violationsInBoth(page, name) {
  const found = [];
  for (const colorScheme of /** @type {const} */ (["dark", "light"])) {
    await page.emulateMedia({ colorScheme });
    const text = await violations(page);
    if (text) found.push(`${name}, ${colorScheme}: ${text}`);
  }
  return found;
}

function format({ id, impact, help, nodes }) {
  const places = nodes.map(({ target, failureSummary }) => `  ${target.flat().join(" ")}\n    ${failureSummary.replaceAll("\n", "\n    ")}`);
  return [`${id} (${impact}): ${help}`, ...places].join("\n");
}
