import { h } from '../dom.js';
import { glyph } from '../glyphs.js';

/** @typedef {import('../ui').Ui} Ui */

/** A dilution to prepare. @param {import('../screen').MixBlock} block @param {Ui} ui */
export function mix(block, ui) {
  const level = Math.min(6, ui.level + 1);
  return h(
    'div',
    { role: 'group', class: 'mix', 'aria-label': block.title },
    h(`h${level}`, { class: 'mix-title' }, block.title),
    h('dl', { class: 'amounts' }, block.rows.map((row) => h('div', null, h('dt', null, row.label), h('dd', null, row.amount)))),
    block.order.length ? h('ol', { class: 'order' }, block.order.map((line) => h('li', null, h('span', null, line)))) : null,
    block.warning ? h('p', { class: 'mix-warning' }, glyph('danger'), h('span', null, block.warning)) : null,
  );
}

/** Rows and columns. The first column names the row. @param {import('../screen').TableBlock} block */
export function table(block) {
  return h(
    'div',
    { class: 'table-box', role: 'region', tabindex: '0', 'aria-label': block.caption },
    h(
      'table',
      null,
      h('caption', null, block.caption),
      h('thead', null, h('tr', null, block.columns.map((column) => h('th', { scope: 'col' }, column)))),
      h(
        'tbody',
        null,
        block.rows.map((row) => h('tr', null, row.map((cell, at) => (at ? h('td', null, cell) : h('th', { scope: 'row' }, cell))))),
      ),
    ),
  );
}

/** Bars with their doubt. The words beside each bar say the same. @param {import('../screen').ChartBlock} block */
export function chart(block) {
  const ends = block.bars.flatMap((bar) => [bar.value - bar.doubt, bar.value + bar.doubt]);
  const low = Math.min(0, ...ends);
  const span = Math.max(0, ...ends) - low || 1;
  /** @param {number} value */
  const at = (value) => `${(((value - low) / span) * 100).toFixed(2)}%`;
  return h(
    'figure',
    { class: 'chart' },
    h('figcaption', null, block.caption, block.unit ? h('span', { class: 'chart-unit' }, ` (${block.unit})`) : null),
    h(
      'ul',
      null,
      block.bars.map((bar, index) =>
        h(
          'li',
          { class: `bar-row bar-${index % 4}` },
          h('span', { class: 'bar-label' }, bar.label),
          h(
            'span',
            {
              class: 'track', 'aria-hidden': 'true',
              vars: {
                '--zero': at(0), '--from': at(Math.min(0, bar.value)), '--to': at(Math.max(0, bar.value)),
                '--low': at(bar.value - bar.doubt), '--high': at(bar.value + bar.doubt),
              },
            },
            h('span', { class: 'length' }),
            bar.doubt > 0 ? h('span', { class: 'doubt' }) : null,
          ),
          h('span', { class: 'bar-text' }, bar.text),
        ),
      ),
    ),
  );
}
