import type { Action, DwellBlock, NumberBlock, TextEntryBlock } from './screen';
import type { Fields } from './fields.js';

/** What a block may use while it is drawn. */
export type Ui = {
  /** Sends an action, after everything that is half typed. */
  press(action: Action): void;
  /** Whether the same press is on its way. */
  waits(action: Action): boolean;
  /** What is half typed. */
  fields: Fields;
  /** A field was left. */
  leave(block: NumberBlock | TextEntryBlock, text: string): void;
  /** The address of a photograph's small picture; none until it came. */
  preview(digest: string): string | null;
  /** The time by which the core goes, milliseconds. */
  nowMs: number;
  /** Leaps over a waiting time; only in a rehearsal. */
  leap: ((ms: number) => void) | null;
  /** The level of the heading above: 1 to 6. */
  level: number;
  /** The waiting time that the screen is about: it stands on top. */
  lone: DwellBlock | null;
  /** Lines about a waiting alarm to show below a waiting time. */
  alarm: { text: string; allow: (() => void) | null } | null;
};
