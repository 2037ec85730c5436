// Something to draw by hand: with a finger, a pen or the mouse. What is drawn is half typed until it is taken, so that a page
// that is loaded again still has it.

import { h } from '../dom.js';
import { glyph } from '../glyphs.js';
import { say } from '../words.js';
import { pressable } from './button.js';
import { problemLine } from './number.js';

/** @typedef {import('../screen').InkBlock} InkBlock */
/** @typedef {import('../ui').Ui} Ui */
/** @typedef {[number, number]} Point */
/** @typedef {{ block: InkBlock, ui: Ui, strokes: Point[][], text: string, pen: number | null }} Pad */

/** How wide the pen draws, CSS pixels. Pressure has no say: a finger has none. */
const PEN_PX = 2.6;
/** A point that lies nearer to the one before is not kept, CSS pixels. */
const NEAR_PX = 1.2;
/** More points than the core keeps, and fewer than it takes. */
const POINTS_MAX = 16_000;

/** What is drawn on each canvas. @type {WeakMap<HTMLCanvasElement, Pad>} */
const pads = new WeakMap();

/** @param {InkBlock} block @param {Ui} ui */
export function ink(block, ui) {
  const id = `ink-${block.field.replace(/[^\w-]/g, '_')}`;
  const text = ui.fields.text(block.field, block.text);
  const drawn = strokesOf(text).length > 0;
  const about = [`${id}-hint`, block.problem ? `${id}-problem` : '', block.taken ? `${id}-taken` : ''].filter(Boolean);
  return h(
    'div',
    {
      key: `ink:${block.field}`, class: `field ink${block.problem ? ' wrong' : ''}`, role: 'group',
      'aria-labelledby': `${id}-label`, 'aria-describedby': about.join(' '),
    },
    h('p', { id: `${id}-label`, class: 'field-label' }, block.label),
    h('p', { id: `${id}-hint`, class: 'hint' }, block.hint),
    h(
      'div',
      { class: 'ink-pad', vars: { '--wide': block.width, '--high': block.height } },
      h('canvas', {
        key: id, id, role: 'img', 'aria-label': `${block.label}: ${say(drawn ? 'shell-ink-drawn' : 'shell-ink-empty')}`,
        mount: (/** @type {HTMLCanvasElement} */ canvas) => mounted(canvas, block, ui, text),
        on: listeners,
      }),
    ),
    refreshed(id, block, ui, text),
    problemLine(block.problem, `${id}-problem`),
    block.taken ? h('p', { id: `${id}-taken`, class: 'in-record' }, glyph('kept'), h('span', null, block.taken)) : null,
    h(
      'div',
      { class: 'row' },
      pressable(block.press, ui),
      h(
        'button',
        { key: 'clear', type: 'button', class: 'button tone-plain', on: { click: () => clear(id) } },
        h('span', { class: 'label' }, say('shell-ink-clear')),
      ),
      block.others.map((button) => pressable(button, ui)),
    ),
  );
}

/** What stands on the canvas follows what is typed, as soon as it is there. @param {string} id @param {InkBlock} block @param {Ui} ui @param {string} text */
function refreshed(id, block, ui, text) {
  const canvas = canvasOf(id);
  const pad = canvas && pads.get(canvas);
  if (canvas && pad) {
    pad.block = block;
    pad.ui = ui;
    if (pad.pen === null && pad.text !== text) {
      pad.text = text;
      pad.strokes = strokesOf(text);
    }
    queueMicrotask(() => paint(canvas));
  }
  return null;
}

/** @param {HTMLCanvasElement} canvas @param {InkBlock} block @param {Ui} ui @param {string} text */
function mounted(canvas, block, ui, text) {
  pads.set(canvas, { block, ui, strokes: strokesOf(text), text, pen: null });
  new ResizeObserver(() => paint(canvas)).observe(canvas);
  matchMedia('(prefers-color-scheme: dark)').addEventListener('change', () => paint(canvas));
  paint(canvas);
}

/** @param {string} id */
function canvasOf(id) {
  const canvas = document.getElementById(id);
  return canvas instanceof HTMLCanvasElement ? canvas : null;
}

/** What the text holds; a text that is none draws nothing. @param {string} text @returns {Point[][]} */
function strokesOf(text) {
  try {
    const { strokes } = JSON.parse(text);
    return Array.isArray(strokes) ? strokes : [];
  } catch {
    return [];
  }
}

/** One pen at a time draws: a palm or a second finger does not. */
const listeners = {
  /** @param {PointerEvent} event */
  pointerdown: (event) => {
    const canvas = /** @type {HTMLCanvasElement} */ (event.currentTarget);
    const pad = pads.get(canvas);
    if (!pad || pad.pen !== null || !event.isPrimary || event.button !== 0) return;
    event.preventDefault();
    canvas.setPointerCapture(event.pointerId);
    pad.pen = event.pointerId;
    pad.strokes.push([]);
    goes(canvas, pad, event);
  },
  /** @param {PointerEvent} event */
  pointermove: (event) => {
    const canvas = /** @type {HTMLCanvasElement} */ (event.currentTarget);
    const pad = pads.get(canvas);
    if (!pad || pad.pen !== event.pointerId) return;
    const all = event.getCoalescedEvents?.() ?? [];
    for (const each of all.length ? all : [event]) goes(canvas, pad, each);
  },
  /** @param {PointerEvent} event */
  pointerup: (event) => lifted(event),
  /** @param {PointerEvent} event */
  pointercancel: (event) => lifted(event),
};

/** The pen is there now. @param {HTMLCanvasElement} canvas @param {Pad} pad @param {PointerEvent} event */
function goes(canvas, pad, event) {
  const stroke = pad.strokes.at(-1);
  const box = canvas.getBoundingClientRect();
  if (!stroke || !box.width || !box.height) return;
  const within = (/** @type {number} */ share, /** @type {number} */ side) => Math.round(Math.min(1, Math.max(0, share)) * side);
  const x = within((event.clientX - box.left) / box.width, pad.block.width);
  const y = within((event.clientY - box.top) / box.height, pad.block.height);
  const last = stroke.at(-1);
  const near = (NEAR_PX * pad.block.width) / box.width;
  if (last && Math.hypot(x - last[0], y - last[1]) < near) return;
  if (pad.strokes.reduce((sum, each) => sum + each.length, 0) >= POINTS_MAX) return;
  stroke.push([x, y]);
  paint(canvas);
}

/** The pen is lifted: what is drawn so far is kept. @param {PointerEvent} event */
function lifted(event) {
  const canvas = /** @type {HTMLCanvasElement} */ (event.currentTarget);
  const pad = pads.get(canvas);
  if (!pad || pad.pen !== event.pointerId) return;
  pad.pen = null;
  keep(pad);
}

/** @param {Pad} pad */
function keep(pad) {
  const { width, height, field } = pad.block;
  pad.text = pad.strokes.length ? JSON.stringify({ width, height, strokes: pad.strokes }) : '';
  pad.ui.fields.drawn(field, pad.text);
}

/** @param {string} id */
function clear(id) {
  const canvas = canvasOf(id);
  const pad = canvas && pads.get(canvas);
  if (!canvas || !pad) return;
  pad.strokes = [];
  keep(pad);
  paint(canvas);
}

/** Draws all of it, as fine as the screen is. @param {HTMLCanvasElement} canvas */
function paint(canvas) {
  const pad = pads.get(canvas);
  const context = canvas.getContext('2d');
  const { width: wide, height: high } = canvas.getBoundingClientRect();
  if (!pad || !context || !wide) return;
  const fine = devicePixelRatio || 1;
  const [width, height] = [Math.round(wide * fine), Math.round(high * fine)];
  if (canvas.width !== width) canvas.width = width;
  if (canvas.height !== height) canvas.height = height;
  context.clearRect(0, 0, width, height);
  const [across, down] = [width / pad.block.width, height / pad.block.height];
  context.strokeStyle = getComputedStyle(canvas).color;
  context.lineWidth = PEN_PX * fine;
  context.lineCap = 'round';
  context.lineJoin = 'round';
  for (const stroke of pad.strokes) {
    const [first, ...rest] = stroke;
    if (!first) continue;
    context.beginPath();
    context.moveTo(first[0] * across, first[1] * down);
    for (const [x, y] of rest.length ? rest : [first]) context.lineTo(x * across, y * down);
    context.stroke();
  }
}
