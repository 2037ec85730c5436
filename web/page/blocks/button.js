import { h } from '../dom.js';
import { glyph } from '../glyphs.js';
import { holdListeners } from '../hold.js';
import { say } from '../words.js';

/** @typedef {import('../screen').Button} Button */
/** @typedef {import('../ui').Ui} Ui */

/**
 * Something to press.
 * @param {Button} button @param {Ui} ui @param {{ main?: boolean, key?: string, icon?: string, here?: boolean }} [how]
 */
export function pressable(button, ui, how = {}) {
  const busy = ui.waits(button.press);
  const press = () => ui.press(button.press);
  const classes = ['button', `tone-${button.tone}`, how.main ? 'main' : '', button.hold ? 'hold' : '', button.label.length > 22 ? 'wordy' : ''];
  const mark = how.icon ?? (button.tone === 'danger' || button.tone === 'attention' ? button.tone : null);
  return h(
    'button',
    {
      key: how.key ?? `press:${JSON.stringify(button.press)}`,
      type: 'button',
      class: classes.filter(Boolean).join(' '),
      'aria-busy': busy ? 'true' : null,
      'aria-current': how.here ? 'page' : null,
      on: button.hold ? holdListeners(press) : { click: press },
    },
    button.hold ? h('span', { class: 'fill', 'aria-hidden': 'true' }) : null,
    mark ? glyph(mark) : null,
    h('span', { class: 'label' }, button.label),
    button.hold ? h('span', { class: 'hold-hint' }, say('shell-hold')) : null,
    button.hold ? h('span', { class: 'armed-hint', role: 'status' }, say('shell-press-again')) : null,
    busy ? h('span', { class: 'busy', 'aria-hidden': 'true' }) : null,
  );
}
