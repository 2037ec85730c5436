import { h } from '../dom.js';
import { glyph } from '../glyphs.js';
import { say } from '../words.js';

/** @typedef {import('../ui').Ui} Ui */
/** @typedef {import('../screen').Block} Block */
/** @typedef {import('../screen').DwellBlock} DwellBlock */

/** @type {Record<string, string>} */
const MARKS = { waiting: 'open', running: 'running', ready: 'done', over: 'danger', ended: 'done' };

/**
 * A waiting time, with a clock that runs. `place` is where it stands: among others, on top, or on top with digits for two
 * metres.
 * @param {DwellBlock} block @param {Ui} ui @param {'among' | 'ahead' | 'alone'} [place]
 */
export function dwell(block, ui, place = 'among') {
  const level = Math.min(6, ui.level + 1);
  const running = runs(block);
  const { text, label } = clock(block, ui.nowMs);
  const share = block.least_ms > 0 ? 1 - (block.least_at_utc_ms - ui.nowMs) / block.least_ms : 1;
  return h(
    'div',
    { key: `dwell:${block.title}`, role: 'group', class: `dwell dwell-${block.state}${place === 'among' ? '' : ` ${place}`}`, 'aria-label': block.title },
    h('div', { class: 'dwell-head' }, glyph(MARKS[block.state] ?? 'running'), h(`h${level}`, { class: 'dwell-title' }, block.title)),
    running
      ? h(
          'p',
          { class: 'clock', role: 'timer', 'aria-live': 'off' },
          h('span', { class: text.length > 5 ? 'time long' : 'time' }, text),
          h('span', { class: 'time-label' }, label),
        )
      : null,
    running
      ? h('div', { class: 'bar', 'aria-hidden': 'true', vars: { '--share': Math.min(1, Math.max(0, share)).toFixed(4) } }, h('span', { class: 'bar-fill' }))
      : null,
    running || block.state === 'waiting' ? limits(block) : null,
    // While the clock runs its digits say it.
    block.state === 'running' ? null : h('p', { class: 'dwell-state' }, block.state_text),
    running && block.then ? h('p', { class: 'then' }, h('span', { class: 'then-label' }, say('shell-then')), h('span', null, block.then)) : null,
    ui.leap && block.state === 'running' ? leapButton(block, ui.leap, ui.nowMs) : null,
    running && ui.alarm
      ? h(
          'div',
          { class: 'alarm-line' },
          h('p', null, glyph('bell'), h('span', null, ui.alarm.text)),
          ui.alarm.allow ? h('button', { type: 'button', class: 'button', on: { click: ui.alarm.allow } }, say('shell-alarm-allow')) : null,
        )
      : null,
  );
}

/** @param {DwellBlock} block @param {(ms: number) => void} leap @param {number} nowMs */
function leapButton(block, leap, nowMs) {
  const click = () => leap(block.least_at_utc_ms - nowMs + 1000);
  return h('button', { type: 'button', class: 'button', on: { click } }, say('shell-leap'));
}

/** The clock times to read aloud. @param {DwellBlock} block */
function limits(block) {
  if (!block.least_clock && !block.most_clock) return null;
  return h(
    'dl',
    { class: 'limits' },
    block.least_clock ? h('div', null, h('dt', null, say('shell-least')), h('dd', null, block.least_clock)) : null,
    block.most_clock ? h('div', null, h('dt', null, say('shell-most')), h('dd', null, block.most_clock)) : null,
  );
}

/**
 * What the big digits say: the time to the least, then the time to the most, then the time past it.
 * @param {DwellBlock} block @param {number} nowMs
 */
function clock(block, nowMs) {
  if (nowMs < block.least_at_utc_ms) return { text: span(block.least_at_utc_ms - nowMs), label: say('shell-to-least') };
  if (nowMs < block.most_at_utc_ms) return { text: span(block.most_at_utc_ms - nowMs), label: say('shell-to-most') };
  return { text: `+${span(nowMs - block.most_at_utc_ms)}`, label: say('shell-past-most') };
}

/** Minutes and seconds, and hours where there are any. A part of a second counts as a whole one. @param {number} ms */
function span(ms) {
  const all = Math.ceil(ms / 1000);
  const seconds = String(all % 60).padStart(2, '0');
  const minutes = Math.floor(all / 60) % 60;
  const hours = Math.floor(all / 3600);
  return hours ? `${hours}:${String(minutes).padStart(2, '0')}:${seconds}` : `${minutes}:${seconds}`;
}

/**
 * The waiting time that a screen is about: the only one that runs, where no more than one step is shown.
 * @param {Block[]} blocks @returns {DwellBlock | null}
 */
export function loneDwell(blocks) {
  const all = blocks.flatMap((block) => (block.block === 'step' ? block.blocks : [block]));
  const running = all.filter((block) => block.block === 'dwell' && runs(block));
  const steps = blocks.filter((block) => block.block === 'step');
  const only = running[0];
  return running.length === 1 && steps.length <= 1 && only?.block === 'dwell' ? only : null;
}

/** Whether nothing beside the waiting time asks for a hand. @param {Block[]} blocks @returns {boolean} */
export function onlyToWait(blocks) {
  return blocks.every((block) => (block.block === 'step' ? onlyToWait(block.blocks) : !HANDS.has(block.block)));
}

const HANDS = new Set(['number', 'text-entry', 'choice', 'shot']);

/** @param {DwellBlock} block */
const runs = (block) => block.state === 'running' || block.state === 'ready' || block.state === 'over';

/**
 * The next moment at which a running waiting time passes a limit: then the screen is read again.
 * @param {Block[]} blocks @param {number} nowMs @returns {number}
 */
export function nextLimit(blocks, nowMs) {
  let next = Infinity;
  for (const block of blocks) {
    if (block.block === 'step') next = Math.min(next, nextLimit(block.blocks, nowMs));
    if (block.block !== 'dwell' || !runs(block)) continue;
    for (const at of [block.least_at_utc_ms, block.most_at_utc_ms]) if (at > nowMs) next = Math.min(next, at);
  }
  return next;
}

/** Whether a clock runs anywhere. @param {Block[]} blocks @returns {boolean} */
export function clockRuns(blocks) {
  return blocks.some((block) => {
    if (block.block === 'step') return clockRuns(block.blocks);
    return block.block === 'dwell' && runs(block);
  });
}
