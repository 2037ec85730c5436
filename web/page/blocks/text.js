import { h } from '../dom.js';
import { glyph } from '../glyphs.js';
import { signOf } from '../signs.js';
import { say } from '../words.js';

/** @typedef {import('../ui').Ui} Ui */

/** Words: running text, or a heading of a level from 1 to 6. @param {import('../screen').TextBlock} block @param {number} level */
export function text(block, level) {
  if (block.level > 0) {
    return h(`h${level}`, { class: `heading heading-${block.level} tone-${block.tone}` }, block.text);
  }
  const marked = block.tone === 'good' || block.tone === 'attention' || block.tone === 'danger';
  const lines = block.text.split('\n').flatMap((line, at) => (at ? [h('br', null), line] : [line]));
  return h('p', { class: `text tone-${block.tone}` }, marked ? glyph(toneGlyph(block.tone)) : null, h('span', null, lines));
}

/** A hazard where it bites. @param {import('../screen').CautionBlock} block @param {Ui} ui */
export function caution(block, ui) {
  const level = Math.min(6, ui.level + 1);
  return h(
    'div',
    { role: 'group', class: 'caution', 'aria-label': `${say('shell-caution')}: ${block.title}` },
    h('div', { class: 'caution-head' }, signOf(block.sign), h(`h${level}`, { class: 'caution-title' }, block.title)),
    h('p', null, block.text),
  );
}

/**
 * Another page. Only addresses that open a page or call a person are followed.
 * @param {import('../screen').LinkBlock} block
 */
export function link(block) {
  const outside = /^(https?:|tel:|sms:|mailto:|geo:)/i.test(block.to);
  const inside = /^[/#?.]/.test(block.to) && !block.to.startsWith('//');
  if (!outside && !inside) return h('p', { class: 'text' }, `${block.label}: ${block.to}`);
  // The owner's summary is a page of its own, so that the visit stays where it is.
  const page = /^https?:/i.test(block.to) || block.to.startsWith('/summary/');
  return h(
    'a',
    { class: 'button link', href: block.to, target: page ? '_blank' : null, rel: page ? 'noopener noreferrer' : null },
    h('span', { class: 'label' }, block.label),
    page ? h('span', { class: 'unseen' }, ` (${say('shell-new-tab')})`) : null,
    page ? glyph('leave') : null,
  );
}

/** The letter of what a screen or a photograph belongs to. @param {string} letter */
export const unitLetter = (letter) =>
  h('p', { class: 'unit-letter' }, h('span', { class: 'unseen' }, `${say('shell-unit')} `), h('span', null, letter));

/** @param {import('../screen').Tone} tone */
export const toneGlyph = (tone) => (tone === 'good' ? 'done' : tone);
