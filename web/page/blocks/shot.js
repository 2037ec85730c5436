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
      photo.flags.map((flag) => h('span', { class: 'flag' }, glyph('attention'), h('span', null, flag))),
    ),
  );
}
