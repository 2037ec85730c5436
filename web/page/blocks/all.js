// Every block kind and what draws it. Runs of small blocks of one kind are set side by side where there is room.

import { h } from '../dom.js';
import { pressable } from './button.js';
import { chart, mix, table } from './data.js';
import { dwell } from './dwell.js';
import { ink } from './ink.js';
import { number, textEntry } from './number.js';
import { check, choice } from './pick.js';
import { plot } from './plot.js';
import { shot } from './shot.js';
import { step } from './step.js';
import { caution, link, text } from './text.js';

/** @typedef {import('../screen').Block} Block */
/** @typedef {import('../ui').Ui} Ui */

const SIDE_BY_SIDE = new Set(['check', 'button', 'link', 'number', 'shot', 'caution']);

/**
 * Draws blocks in order. A heading among them sets the level of what follows.
 * @param {Block[]} list @param {Ui} ui
 * @returns {import('../dom.js').Node_[]}
 */
export function blocks(list, ui) {
  /** @type {import('../dom.js').Node_[]} */
  const out = [];
  let level = ui.level;
  for (let at = 0; at < list.length; ) {
    const block = /** @type {Block} */ (list[at]);
    const kind = block.block;
    let end = at + 1;
    if (SIDE_BY_SIDE.has(kind)) while (list[end]?.block === kind) end += 1;
    if (block.block === 'text' && block.level > 0) {
      // A heading is never more than one level below the last one, whatever its size.
      level = Math.min(6, ui.level + block.level, level + 1);
      out.push(text(block, level));
    } else if (SIDE_BY_SIDE.has(kind)) {
      const run = list.slice(at, end).map((each) => one(each, { ...ui, level }));
      out.push(h('div', { class: `run run-${kind}${end - at > 1 ? ' many' : ''}` }, run));
    } else {
      const drawn = one(block, { ...ui, level });
      if (drawn) out.push(drawn);
    }
    at = end;
  }
  return out;
}

/** @param {Block} block @param {Ui} ui */
function one(block, ui) {
  switch (block.block) {
    case 'text': return text(block, ui.level);
    case 'caution': return caution(block, ui);
    case 'step': return step(block, ui);
    case 'check': return check(block, ui);
    case 'choice': return choice(block, ui);
    case 'number': return number(block, ui);
    case 'text-entry': return textEntry(block, ui);
    case 'ink': return ink(block, ui);
    case 'shot': return shot(block, ui);
    case 'dwell': return block === ui.lone ? null : dwell(block, ui);
    case 'mix': return mix(block, ui);
    case 'table': return table(block);
    case 'chart': return chart(block);
    case 'plot': return plot(block.plot);
    case 'link': return link(block);
    case 'button': return pressable(block.button, ui);
    default: return unknown(block);
  }
}

/** A kind that this page does not know yet is said, not hidden. @param {never} block */
function unknown(block) {
  return h('p', { class: 'text tone-attention' }, JSON.stringify(block));
}
