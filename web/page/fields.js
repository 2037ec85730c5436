// What is half typed. It lives here until the core has it, so that a redraw, a lost process or a refusal takes nothing away.

/** @typedef {import('./screen').Action} Action */
/** @typedef {import('./screen').NumberBlock} NumberBlock */
/** @typedef {import('./screen').TextEntryBlock} TextEntryBlock */

/** How long typing must rest before the text is sent, milliseconds. */
const REST_MS = 300;

export class Fields {
  /** @param {(action: Action) => void} send */
  constructor(send) {
    this.send = send;
    /** Text that the core has not acknowledged. @type {Map<string, string>} */
    this.local = new Map();
    /** Fields typed in since they were last entered. @type {Set<string>} */
    this.touched = new Set();
    /** Fields whose draft the core has, while somebody still types in them. @type {Set<string>} */
    this.kept = new Set();
    /** What was entered last: Enter and leaving the field at once is meant once. @type {Map<string, string>} */
    this.entered = new Map();
    /** @type {Map<string, number>} */
    this.timers = new Map();
  }

  /** The text to show. @param {string} field @param {string} known */
  text(field, known) {
    return this.local.get(field) ?? known;
  }

  /** @param {string} field @param {string} text */
  typed(field, text) {
    this.local.set(field, text);
    this.touched.add(field);
    this.kept.delete(field);
    clearTimeout(this.timers.get(field));
    this.timers.set(field, setTimeout(() => this.flush(field), REST_MS));
  }

  /** What is drawn is kept at once: a stroke is whole when the pen is lifted. @param {string} field @param {string} text */
  drawn(field, text) {
    this.local.set(field, text);
    this.send({ do: 'draft', field, text });
  }

  /** Sends a text that still rests. @param {string} field */
  flush(field) {
    const timer = this.timers.get(field);
    if (timer === undefined) return;
    clearTimeout(timer);
    this.timers.delete(field);
    const text = this.local.get(field);
    if (text !== undefined) this.send({ do: 'draft', field, text });
  }

  /** Before anything is pressed. */
  flushAll() {
    for (const field of [...this.timers.keys()]) this.flush(field);
  }

  /**
   * A field was left: what was typed is meant. A field that was only passed through is not sent again.
   * @param {NumberBlock | TextEntryBlock} block @param {string} text
   */
  leave(block, text) {
    const field = block.field;
    const halfTyped =
      block.block === 'number' && text !== '' && block.taken === null && block.problem === null && block.question === null;
    if (!this.touched.has(field) && !(halfTyped && this.entered.get(field) !== text)) return;
    // An alarm that steps in front of somebody who types is no sign that the number is whole.
    if (document.querySelector('dialog[open]')) return;
    this.entered.set(field, text);
    clearTimeout(this.timers.get(field));
    this.timers.delete(field);
    this.touched.delete(field);
    this.local.set(field, text);
    this.send({ do: 'enter', field, text });
  }

  /** The core has it. A field that was not left yet keeps what stands in it. @param {Action} action */
  acknowledged(action) {
    const field = action['field'];
    if (typeof field !== 'string' || this.local.get(field) !== action['text']) return;
    if (this.touched.has(field)) this.kept.add(field);
    else this.local.delete(field);
  }

  /** Another screen is shown: what the core has is its own to show again. */
  turned() {
    for (const field of this.kept) this.local.delete(field);
    this.kept.clear();
    this.touched = new Set(this.local.keys());
    this.entered.clear();
  }
}
