import { h } from '../dom.js';
import { glyph } from '../glyphs.js';
import { blocks } from './all.js';

/** @typedef {import('../ui').Ui} Ui */

/** A step with what belongs to it. @param {import('../screen').StepBlock} block @param {Ui} ui */
export function step(block, ui) {
  const level = Math.min(6, ui.level + 1);
  const inside = blocks(block.blocks, { ...ui, level });
  return h(
    'div',
    { key: `step:${block.id}`, role: 'group', class: `step step-${block.state}`, 'aria-labelledby': idOf(block.id) },
    h(
      'header',
      { class: 'step-head' },
      h('span', { class: 'step-mark', 'aria-hidden': 'true' }, glyph(block.state)),
      h(
        'div',
        { class: 'step-words' },
        h(`h${level}`, { id: idOf(block.id), class: 'step-title' }, block.title),
        block.state_text ? h('p', { class: 'step-state' }, block.state_text) : null,
      ),
    ),
    block.why ? h('p', { class: 'step-why' }, block.why) : null,
    inside.length ? h('div', { class: 'step-body' }, inside) : null,
  );
}

/** @param {string} id */
const idOf = (id) => `step-${id.replace(/[^\w-]/g, '_')}`;
