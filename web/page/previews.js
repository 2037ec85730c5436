// Small pictures of photographs, fetched once and kept as addresses of this page.

/** How many are kept. */
const KEPT = 120;
/** How long to wait before one that failed is asked for again, milliseconds. */
const AGAIN_MS = 10_000;

export class Previews {
  /** @param {import('./screen').Door} door @param {() => void} changed */
  constructor(door, changed) {
    this.door = door;
    this.changed = changed;
    /** @type {Map<string, string>} */
    this.known = new Map();
    /** When each was last asked for. @type {Map<string, number>} */
    this.asked = new Map();
  }

  /** @param {string} digest @returns {string | null} */
  address(digest) {
    const known = this.known.get(digest);
    if (known) return known;
    const asked = this.asked.get(digest);
    if (asked === undefined || Date.now() - asked > AGAIN_MS) {
      this.asked.set(digest, Date.now());
      void this.fetch(digest);
    }
    return null;
  }

  /** @param {string} digest */
  async fetch(digest) {
    try {
      this.known.set(digest, URL.createObjectURL(await this.door.preview(digest)));
    } catch {
      return; // The caption stands in its place, and it is asked for again.
    }
    const oldest = this.known.keys().next().value;
    if (this.known.size > KEPT && oldest !== undefined) {
      URL.revokeObjectURL(this.known.get(oldest) ?? '');
      this.known.delete(oldest);
      this.asked.delete(oldest);
    }
    this.changed();
  }
}
