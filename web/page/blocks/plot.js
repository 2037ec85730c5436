import { h } from '../dom.js';

/** @typedef {import('../screen').PlotLine} PlotLine */

// The drawing's own units: where the axes lie in its box, with room for their words.
const WIDE = 400;
const HIGH = 340;
const LEFT = 56;
const RIGHT = 388;
const TOP = 34;
const BOTTOM = 280;

/** @param {number} x */
const across = (x) => (LEFT + x * (RIGHT - LEFT)).toFixed(1);
/** @param {number} y */
const down = (y) => (BOTTOM - y * (BOTTOM - TOP)).toFixed(1);

/** Lines over two axes. The words say the same to whoever does not see them. @param {import('../screen').Plot} of */
export function plot(of) {
  return h(
    'figure',
    { class: 'plot' },
    h('figcaption', null, of.caption),
    h(
      'svg',
      { role: 'img', 'aria-label': of.text, viewBox: `0 0 ${WIDE} ${HIGH}`, focusable: 'false' },
      of.x_ticks.map((tick) => [
        h('path', { class: 'plot-grid', d: `M${across(tick.at)} ${down(0)}V${down(1)}` }),
        h('text', { x: across(tick.at), y: BOTTOM + 22, 'text-anchor': 'middle' }, tick.text),
      ]).flat(),
      of.y_ticks.map((tick) => [
        h('path', { class: 'plot-grid', d: `M${across(0)} ${down(tick.at)}H${across(1)}` }),
        h('text', { x: LEFT - 8, y: down(tick.at), 'text-anchor': 'end', 'dominant-baseline': 'central' }, tick.text),
      ]).flat(),
      h('path', { class: 'plot-axes', d: `M${across(0)} ${down(1)}V${down(0)}H${across(1)}` }),
      h('text', { class: 'plot-title', x: RIGHT, y: HIGH - 12, 'text-anchor': 'end' }, of.x_title),
      h('text', { class: 'plot-title', x: 4, y: 18 }, of.y_title),
      of.lines.map((line) => h('path', { class: `plot-line plot-${line.style}`, d: path(line) })),
    ),
    h('ul', { class: 'plot-key', 'aria-hidden': 'true' }, named(of.lines).map((line) =>
      h(
        'li',
        null,
        h('svg', { viewBox: '0 0 44 12', focusable: 'false' }, h('path', { class: `plot-line plot-${line.style}`, d: 'M2 6H42' })),
        h('span', null, line.label),
      ))),
  );
}

/** @param {PlotLine} line */
function path(line) {
  return line.points.map((point, at) => `${at ? 'L' : 'M'}${across(point.x)} ${down(point.y)}`).join('');
}

/** Each label once: a thing may be drawn in parts. @param {PlotLine[]} lines */
function named(lines) {
  return lines.filter((line, at) => lines.findIndex((other) => other.label === line.label && other.style === line.style) === at);
}
