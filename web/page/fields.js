// What is half typed. It lives here until the core has it, so that a redraw, a lost process or a refusal takes nothing away.

/** @typedef {import('./screen').Action} Action */
/** @typedef {import('./screen').NumberBlock} NumberBlock */

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
    clearTimeout(this.timers.get(field));
    this.timers.set(field, setTimeout(() => this.flush(field), REST_MS));
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
   * A number's field was left: what was typed is meant. A field that was only passed through is not sent again.
   * @param {NumberBlock} block @param {string} text
   */
  leave(block, text) {
    const field = block.field;
    const halfTyped = text !== '' && block.taken === null && block.problem === null && block.question === null;
    if (this.touched.has(field) || (halfTyped && this.entered.get(field) !== text)) this.enter(field, text);
  }

  /** Words were left. Those that were only passed through are not sent again. @param {string} field @param {string} text */
  leaveWords(field, text) {
    if (this.touched.has(field)) this.enter(field, text);
  }

  /** @param {string} field @param {string} text */
  enter(field, text) {
    clearTimeout(this.timers.get(field));
    this.timers.delete(field);
    this.touched.delete(field);
    this.entered.set(field, text);
    this.local.set(field, text);
    this.send({ do: 'enter', field, text });
  }

  /** The core has it. @param {Action} action */
  acknowledged(action) {
    const field = action['field'];
    if (typeof field === 'string' && this.local.get(field) === action['text']) this.local.delete(field);
  }

  /** Another screen is shown: what was entered there is no guide here. */
  turned() {
    this.touched = new Set(this.local.keys());
    this.entered.clear();
  }
}
