import { h } from '../dom.js';
import { glyph } from '../glyphs.js';
import { say } from '../words.js';
import { pressable } from './button.js';

/** @typedef {import('../ui').Ui} Ui */
/** @typedef {import('../screen').PhotoView} PhotoView */

/** A photograph that is wanted. @param {import('../screen').ShotBlock} block @param {Ui} ui */
export function shot(block, ui) {
  const level = Math.min(6, ui.level + 1);
  return h(
    'div',
    { key: `shot:${block.slot}`, role: 'group', class: `shot${block.photos.length ? ' has' : ''}`, 'aria-label': block.title },
    h(
      'div',
      { class: 'shot-words' },
      h(`h${level}`, { class: 'shot-title' }, block.title),
      block.show ? h('p', { class: 'shot-show' }, block.show) : null,
    ),
    h(
      'div',
      { class: 'pictures' },
      block.drawing && block.photos.length === 0 ? drawing(block.drawing) : null,
      block.before ? picture(block.before, ui, say('shell-before-picture')) : null,
      block.photos.map((photo) => picture(photo, ui, null)),
    ),
    h(
      'div',
      { class: 'row' },
      pressable(block.press, ui, { icon: 'camera' }),
      block.skip ? pressable(block.skip, ui) : null,
    ),
  );
}

// The drawing's own units.
const WIDE = 160;
const HIGH = 120;

/** What such a photograph shows. @param {import('../screen').Drawing} of */
export function drawing(of) {
  const path = (/** @type {{ x: number, y: number }[]} */ points) =>
    points.map(({ x, y }, at) => `${at ? 'L' : 'M'}${(x * WIDE).toFixed(1)} ${((1 - y) * HIGH).toFixed(1)}`).join('');
  return h(
    'svg',
    { key: 'drawing', class: 'drawing', role: 'img', 'aria-label': of.text, viewBox: `0 0 ${WIDE} ${HIGH}`, focusable: 'false' },
    of.lines.map((line) => h('path', { class: line.wanted ? 'drawing-wanted' : 'drawing-around', d: path(line.points) })),
  );
}

/** @param {PhotoView} photo @param {Ui} ui @param {string | null} badge */
export function picture(photo, ui, badge) {
  const address = ui.preview(photo.digest);
  return h(
    'figure',
    { key: `photo:${badge ?? ''}${photo.digest}`, class: badge ? 'picture earlier' : 'picture' },
    address
      ? h('img', { src: address, alt: photo.caption })
      : h('span', { class: 'no-picture', role: 'img', 'aria-label': photo.caption }, glyph('picture')),
    h(
      'figcaption',
      null,
      badge ? h('span', { class: 'badge' }, badge) : null,
      h('span', null, photo.caption),
      photo.read.map((line) => h('span', null, line)),
      photo.flags.map((flag) => h('span', { class: 'flag' }, glyph('attention'), h('span', null, flag))),
    ),
  );
}
