import { h } from '../dom.js';
import { glyph } from '../glyphs.js';
import { problemLine } from './number.js';

/** @typedef {import('../ui').Ui} Ui */

/** One thing to tick. @param {import('../screen').CheckBlock} block @param {Ui} ui */
export function check(block, ui) {
  return h(
    'button',
    {
      key: `check:${JSON.stringify(block.press)}:${block.label}`,
      type: 'button',
      role: 'checkbox',
      class: `check${block.done ? ' checked' : ''}`,
      'aria-checked': block.done ? 'true' : 'false',
      'aria-busy': ui.waits(block.press) ? 'true' : null,
      on: { click: () => ui.press(block.press) },
    },
    h('span', { class: 'box', 'aria-hidden': 'true' }, block.done ? glyph('done') : null),
    h('span', { class: 'label' }, block.label),
  );
}

/** One of several. @param {import('../screen').ChoiceBlock} block @param {Ui} ui */
export function choice(block, ui) {
  const id = `choice-${block.field.replace(/[^\w-]/g, '_')}`;
  const short = block.options.every((option) => option.label.length <= 16);
  return h(
    'div',
    {
      key: `choice:${block.field}`,
      class: 'choice',
      role: 'group',
      'aria-labelledby': id,
      'aria-describedby': block.problem ? `${id}-problem` : null,
    },
    h('p', { id, class: 'field-label' }, block.label),
    h(
      'div',
      { class: short ? 'options short' : 'options' },
      block.options.map((option) => {
        const press = { do: 'choose', field: block.field, option: option.value };
        const chosen = option.value === block.chosen;
        return h(
          'button',
          {
            key: option.value,
            type: 'button',
            class: chosen ? 'option chosen' : 'option',
            'aria-pressed': chosen ? 'true' : 'false',
            'aria-busy': ui.waits(press) ? 'true' : null,
            on: { click: () => ui.press(press) },
          },
          h('span', { class: 'dot', 'aria-hidden': 'true' }, chosen ? glyph('done') : null),
          h('span', { class: 'label' }, option.label),
        );
      }),
    ),
    problemLine(block.problem, `${id}-problem`),
  );
}
