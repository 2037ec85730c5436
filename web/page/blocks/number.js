import { h } from '../dom.js';
import { glyph } from '../glyphs.js';
import { say } from '../words.js';
import { pressable } from './button.js';

/** @typedef {import('../ui').Ui} Ui */

/** A number with its unit. @param {import('../screen').NumberBlock} block @param {Ui} ui */
export function number(block, ui) {
  const id = idOf(block.field);
  const shown = ui.fields.text(block.field, block.text);
  const about = [
    block.hint ? `${id}-hint` : '', block.before ? `${id}-before` : '', block.problem ? `${id}-problem` : '',
    block.question ? `${id}-question` : '', block.taken ? `${id}-taken` : '',
  ].filter(Boolean);
  return h(
    'div',
    { key: `number:${block.field}`, class: `field number${block.problem ? ' wrong' : ''}${block.taken ? ' taken' : ''}` },
    h('label', { for: id, class: 'field-label' }, block.label),
    h(
      'div',
      { class: 'number-row' },
      h(
        'span',
        { class: 'number-box' },
        h('input', {
          id, type: 'text', inputmode: 'decimal', autocomplete: 'off', autocorrect: 'off', spellcheck: 'false',
          enterkeyhint: 'done', value: shown,
          'aria-invalid': block.problem ? 'true' : null,
          'aria-describedby': about.length ? about.join(' ') : null,
          on: {
            /** @param {Event} event */
            input: (event) => ui.fields.typed(block.field, valueOf(event)),
            /** @param {Event} event */
            blur: (event) => ui.leave(block, valueOf(event)),
            /** @param {KeyboardEvent} event */
            keydown: (event) => {
              if (event.key === 'Enter') ui.leave(block, valueOf(event));
            },
          },
        }),
        block.unit ? h('span', { class: 'unit' }, block.unit) : null,
      ),
      h('button', { type: 'button', class: 'button sign-key', 'aria-label': say('shell-sign'), on: { click: () => turnSign(id) } }, '±'),
    ),
    problemLine(block.problem, `${id}-problem`),
    question(block.question, id, ui),
    h(
      'div',
      { class: 'beside' },
      block.taken
        ? h('p', { id: `${id}-taken`, class: 'in-record' }, glyph('kept'), h('span', null, block.taken))
        : null,
      block.before
        ? h('p', { id: `${id}-before`, class: 'was' }, block.before)
        : null,
      block.hint ? h('p', { id: `${id}-hint`, class: 'hint' }, block.hint) : null,
    ),
    block.could_not ? pressable(block.could_not, ui) : null,
  );
}

/** Words to type. @param {import('../screen').TextEntryBlock} block @param {Ui} ui */
export function textEntry(block, ui) {
  const id = idOf(block.field);
  const many = block.lines > 1;
  return h(
    'div',
    { key: `text-entry:${block.field}`, class: `field text-entry${block.problem ? ' wrong' : ''}` },
    h('label', { for: id, class: 'field-label' }, block.label),
    h(many ? 'textarea' : 'input', {
      id, rows: many ? block.lines : null, type: many ? null : 'text', autocomplete: 'off',
      value: ui.fields.text(block.field, block.text),
      'aria-invalid': block.problem ? 'true' : null,
      'aria-describedby': block.problem ? `${id}-problem` : block.question ? `${id}-question` : null,
      on: {
        /** @param {Event} event */
        input: (event) => ui.fields.typed(block.field, valueOf(event)),
        /** @param {Event} event */
        blur: (event) => ui.leave(block, valueOf(event)),
        /** @param {KeyboardEvent} event */
        keydown: (event) => {
          if (event.key === 'Enter' && !many) ui.leave(block, valueOf(event));
        },
      },
    }),
    problemLine(block.problem, `${id}-problem`),
    question(block.question, id, ui),
  );
}

/** What was typed is asked back. @param {import('../screen').Question | null} asked @param {string} id @param {Ui} ui */
function question(asked, id, ui) {
  if (!asked) return null;
  return h(
    'div',
    { class: 'question', role: 'group', 'aria-labelledby': `${id}-question` },
    h('p', { id: `${id}-question` }, glyph('attention'), h('span', null, asked.text)),
    pressable(asked.confirm, ui),
  );
}

/** @param {string | null} problem @param {string} id */
export function problemLine(problem, id) {
  return problem ? h('p', { id, class: 'problem' }, glyph('danger'), h('span', null, problem)) : null;
}

/** Many keypads for numbers have no minus. @param {string} id */
function turnSign(id) {
  const input = document.getElementById(id);
  if (!(input instanceof HTMLInputElement)) return;
  const bare = input.value.replace(/^\s*[-−]/, '');
  input.value = bare === input.value ? `-${bare}` : bare;
  input.dispatchEvent(new Event('input'));
  input.focus();
}

/** @param {Event} event */
const valueOf = (event) => /** @type {HTMLInputElement | HTMLTextAreaElement} */ (event.currentTarget).value;

/** @param {string} field */
const idOf = (field) => `field-${field.replace(/[^\w-]/g, '_')}`;
