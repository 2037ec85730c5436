// A whole screen: what stands around the blocks, and the states in which there is no screen to show.

import { blocks } from './blocks/all.js';
import { pressable } from './blocks/button.js';
import { dwell, onlyToWait } from './blocks/dwell.js';
import { toneGlyph, unitLetter } from './blocks/text.js';
import { h } from './dom.js';
import { problemKey } from './effects/photo.js';
import { glyph } from './glyphs.js';
import { say } from './words.js';

/** @typedef {import('./screen').Screen} Screen */
/** @typedef {import('./screen').Live} Live */
/** @typedef {import('./ui').Ui} Ui */
/** @typedef {import('./session.js').Session} Session */

/** @param {Screen} screen @param {Ui} ui @param {Session} session @param {() => void} openMenu */
export function screenOf(screen, ui, session, openMenu) {
  return [
    h('a', { key: 'skip', class: 'to-main', href: '#main' }, say('shell-to-content')),
    top(screen),
    screen.menu.length
      ? h('nav', { key: 'rail', class: 'rail', 'aria-label': say('shell-menu') }, ways(screen, ui))
      : null,
    screen.strip.length ? strip(screen.strip) : null,
    h(
      'main',
      { key: 'main', id: 'main', tabindex: '-1', class: ui.lone ? 'with-lone' : null },
      session.link === 'lost' ? lostBanner() : null,
      session.trouble ? troubleBanner(session) : null,
      screen.notices.map((notice, at) => noticeOf(notice, at, ui)),
      ui.lone ? dwell(ui.lone, ui, onlyToWait(screen.blocks) ? 'alone' : 'ahead') : null,
      h('div', { key: 'blocks', class: 'blocks' }, blocks(screen.blocks, ui)),
    ),
    screen.foot.length || screen.menu.length ? foot(screen, ui, openMenu) : null,
  ].filter((node) => node !== null);
}

/** The menu's buttons; the one that leads to where one is says so. @param {Screen} screen @param {Ui} ui */
export function ways(screen, ui) {
  return screen.menu.map((button) => pressable(button, ui, { here: button.press['to'] === screen.place }));
}

/** @param {Screen} screen */
function top(screen) {
  return h(
    'header',
    { key: 'top', class: 'top' },
    h(
      'div',
      { class: 'top-row' },
      screen.unit ? unitLetter(screen.unit) : null,
      h(
        'div',
        { class: 'titles' },
        h('h1', { id: 'title', tabindex: '-1' }, screen.title),
        screen.subtitle ? h('p', { class: 'subtitle' }, screen.subtitle) : null,
      ),
    ),
    h(
      'div',
      { class: 'top-state' },
      screen.progress
        ? h('div', { class: 'comb', 'aria-hidden': 'true', vars: { '--done': screen.progress.done, '--total': Math.max(1, screen.progress.total) } })
        : null,
      screen.progress ? h('p', { class: 'progress-text' }, screen.progress.text) : null,
      h(
        'p',
        { class: `outbox tone-${screen.outbox.tone}` },
        glyph(toneGlyph(screen.outbox.tone)),
        h('span', null, `${screen.outbox.label}: `, h('strong', null, screen.outbox.value)),
      ),
    ),
  );
}

/** @param {Live[]} lives */
function strip(lives) {
  return h(
    'section',
    { key: 'strip', class: 'strip', 'aria-label': say('shell-live') },
    h(
      'dl',
      null,
      lives.map((live) =>
        h('div', { class: `live tone-${live.tone}` }, h('dt', null, live.label), h('dd', null, glyph(toneGlyph(live.tone)), h('span', null, live.value))),
      ),
    ),
  );
}

/** @param {import('./screen').Notice} notice @param {number} at @param {Ui} ui */
function noticeOf(notice, at, ui) {
  const [only] = notice.lines;
  return h(
    'div',
    { key: `notice:${notice.title}:${at}`, class: `notice tone-${notice.tone}`, tabindex: '-1', role: 'group', 'aria-label': notice.title },
    h('div', { class: 'notice-head' }, glyph(toneGlyph(notice.tone)), h('h2', null, notice.title)),
    notice.lines.length === 1 && only !== undefined ? h('p', null, only) : null,
    notice.lines.length > 1 ? h('ul', null, notice.lines.map((line) => h('li', null, line))) : null,
    notice.buttons.length ? h('div', { class: 'row' }, notice.buttons.map((button) => pressable(button, ui))) : null,
  );
}

/** @param {Screen} screen @param {Ui} ui @param {() => void} openMenu */
function foot(screen, ui, openMenu) {
  const [main, ...others] = screen.foot;
  return h(
    'footer',
    { key: 'foot', class: 'foot', 'aria-label': say('shell-actions') },
    main ? pressable(main, ui, { main: true }) : null,
    screen.menu.length
      ? h(
          'button',
          { key: 'menu', type: 'button', class: 'button menu-key', 'aria-haspopup': 'dialog', on: { click: openMenu } },
          glyph('menu'),
          h('span', { class: 'label' }, say('shell-menu')),
        )
      : null,
    others.length ? h('div', { class: 'foot-row' }, others.map((button) => pressable(button, ui))) : null,
  );
}

const lostBanner = () =>
  h(
    'div',
    { key: 'lost', class: 'notice tone-attention', role: 'alert' },
    h('div', { class: 'notice-head' }, glyph('attention'), h('h2', null, say('shell-lost'))),
    h('p', null, say('shell-lost-text')),
  );

/** @param {Session} session */
function troubleBanner(session) {
  const trouble = session.trouble;
  if (!trouble) return null;
  const key = problemKey(trouble.problem);
  return h(
    'div',
    { key: 'trouble', class: 'notice tone-danger', role: 'alert' },
    h('div', { class: 'notice-head' }, glyph('danger'), h('h2', null, key ? say(key) : trouble.problem.title || say('shell-failed'))),
    !key && trouble.problem.detail ? h('p', null, trouble.problem.detail) : null,
    h(
      'div',
      { class: 'row' },
      trouble.job ? plain('shell-try-again', () => session.tryAgain()) : null,
      plain('shell-close', () => session.putAside()),
    ),
  );
}

/** @param {string} key @param {() => void} click */
const plain = (key, click) =>
  h('button', { key, type: 'button', class: 'button', on: { click } }, h('span', { class: 'label' }, say(key)));

/** The states without a screen: opening, lost, open elsewhere, no token. @param {Session} session */
export function stateOf(session) {
  const link = session.link;
  const alert = link !== 'opening';
  return [
    h(
      'main',
      { key: `state:${link}`, id: 'main', class: 'state', tabindex: '-1' },
      glyph(link === 'opening' ? 'running' : link === 'elsewhere' ? 'leave' : 'attention', 'state-mark'),
      h('h1', { id: 'title', tabindex: '-1' }, say(`shell-${link}`)),
      h('p', { role: alert ? 'alert' : 'status' }, say(`shell-${link}-text`)),
      session.trouble ? h('p', { class: 'problem' }, glyph('danger'), h('span', null, `${session.trouble.problem.title} ${session.trouble.problem.detail}`)) : null,
      link === 'elsewhere'
        ? h('button', { type: 'button', class: 'button main tone-primary', on: { click: () => void session.open() } }, h('span', { class: 'label' }, say('shell-use-this-window')))
        : null,
    ),
  ];
}
