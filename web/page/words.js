// The shell's own words. They come with the page, and again when the language of the screen changes.

/** @type {Record<string, string>} */
let known = {};

/** Takes the words that the page was served with. */
export function wordsOfPage() {
  try {
    known = JSON.parse(document.getElementById('words')?.textContent ?? '{}');
  } catch {
    known = {};
  }
}

/** @param {Record<string, string>} words */
export function setWords(words) {
  known = { ...known, ...words };
}

/**
 * The words for `key`, or the key itself where a door does not know them.
 * @param {string} key
 */
export const say = (key) => known[key] ?? key;

/** @param {string} key */
export const knows = (key) => key in known;
