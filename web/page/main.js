// The page: holds its parts together, draws what the core says, and knows nothing of what the screens are about.

import { notice } from './announce.js';
import { clockRuns, loneDwell, nextLimit } from './blocks/dwell.js';
import { alarmDialog, menuDialog, photoDialog } from './dialogs.js';
import { draw } from './dom.js';
import { localDoor, takeToken } from './door.js';
import { Alarms } from './effects/alarm.js';
import { keepAwake } from './effects/awake.js';
import { watchCharge } from './effects/charge.js';
import { watchNetwork } from './effects/network.js';
import { Photos } from './effects/photo.js';
import { locate } from './effects/place.js';
import { Fields } from './fields.js';
import { screenOf, stateOf } from './layout.js';
import { Previews } from './previews.js';
import { Session } from './session.js';
import { setWords, wordsOfPage } from './words.js';

/** @typedef {import('./screen').Screen} Screen */
/** @typedef {import('./screen').Effect} Effect */

const TICK_MS = 500;

wordsOfPage();
const app = /** @type {HTMLElement} */ (document.getElementById('app'));
const door = localDoor(takeToken());
const session = new Session(door, {
  changed: schedule,
  effect,
  acknowledged: (action) => fields.acknowledged(action),
  settled: (effectId) => photos.settled(effectId),
  language: () => void door.words().then(setWords).then(schedule, () => undefined),
});
const fields = new Fields((action) => session.act(action));
const previews = new Previews(door, schedule);
const photos = new Photos(door, { changed: schedule, done: (id, outcome) => session.done(id, outcome) });
const alarms = new Alarms({
  changed: schedule,
  nowMs: () => door.nowMs(),
  woken: (id) => session.done(id, { outcome: 'woken' }),
  // Without an answer the alarm rings: better once too often.
  stillWanted: async (id) => {
    // Another window has the door: it rings there, and asking here would take the door away from it.
    if (session.link === 'elsewhere') return false;
    return door.open().then((turn) => turn.effects.some((each) => each.id === id), () => true);
  },
});
/** Requests that were begun, so that one handed out again is not begun twice. @type {Set<string>} */
const begun = new Set();
let menuOpen = false;

/** @param {Effect} effect */
function effect({ id, request }) {
  if (request.ask === 'wake-at') {
    alarms.set({ id, atMs: request.utc_ms, text: request.text });
    return;
  }
  if (begun.has(id)) return;
  begun.add(id);
  if (request.ask === 'take-photo') photos.want({ id, ...request });
  if (request.ask === 'locate') void locate().then((outcome) => session.done(id, outcome));
}

// A redraw under a finger would take the button away before the press is complete.
let pointerDown = false;
let scheduled = false;
addEventListener('pointerdown', () => (pointerDown = true), { capture: true });
for (const kind of ['pointerup', 'pointercancel']) {
  addEventListener(kind, () => setTimeout(() => ((pointerDown = false), schedule())), { capture: true });
}

function schedule() {
  if (scheduled) return;
  scheduled = true;
  setTimeout(() => {
    scheduled = false;
    if (!pointerDown) render();
  });
}

/** @type {import('./ui').Ui} */
const ui = {
  press: (action) => {
    fields.flushAll();
    session.act(action);
  },
  waits: (action) => session.waits(action),
  fields,
  leave: (block, text) => fields.leave(block, text),
  preview: (digest) => previews.address(digest),
  nowMs: 0,
  leap: null,
  level: 1,
  lone: null,
  alarm: null,
};

/** @param {number} ms */
const leap = (ms) => void session.leap(ms);

let place = '';
/** @type {Map<string, number>} */
const scrolled = new Map();

function render() {
  const screen = session.screen;
  if (!screen || session.link === 'elsewhere' || session.link === 'shut') {
    draw(app, stateOf(session));
    if (place !== session.link) focusTitle();
    place = session.link;
    return;
  }
  document.documentElement.lang = screen.language;
  const lone = loneDwell(screen.blocks);
  // A waiting time that begins is a new screen: its clock stands above, where whoever pressed 'start' may not look.
  const here = `${screen.place} ${screen.unit ?? ''} ${stepOf(screen)} ${lone ? 'waits' : ''}`;
  const turned = here !== place;
  if (turned) {
    scrolled.set(place, scrollY);
    fields.turned();
  }
  const now = { ...ui, nowMs: door.nowMs(), leap: door.leap && leap, lone, alarm: alarms.line() };
  const openMenu = () => ((menuOpen = true), schedule());
  const closeMenu = () => ((menuOpen = false), schedule());
  const above = [
    menuOpen ? menuDialog(screen, now, closeMenu) : null,
    photoDialog(photos, screen.blocks, now, session.link === 'lost'),
    alarmDialog(alarms),
  ].filter((node) => node !== null);
  draw(app, [...screenOf(screen, now, session, openMenu), ...above]);
  if (!alarms.ringing) document.title = screen.subtitle ? `${screen.title} · ${screen.subtitle}` : screen.title;
  if (turned) {
    place = here;
    focusTitle();
    scrollTo(0, scrolled.get(here) ?? 0);
  }
  notice(screen, turned);
  measureFoot();
  void keepAwake(clockRuns(screen.blocks));
}

/** The one step that a screen is about: the next step under the same name is another screen. @param {Screen} screen */
function stepOf(screen) {
  const steps = screen.blocks.filter((block) => block.block === 'step');
  return steps.length === 1 ? steps[0]?.id : '';
}

function focusTitle() {
  if (!document.querySelector('dialog[open]')) document.getElementById('title')?.focus({ preventScroll: true });
}

/** Keeps a focused field from hiding behind the foot. */
function measureFoot() {
  const foot = document.querySelector('.foot');
  const top = document.querySelector('.top');
  const style = document.documentElement.style;
  style.setProperty('--foot-height', `${foot instanceof HTMLElement ? foot.offsetHeight : 0}px`);
  style.setProperty('--top-height', `${top instanceof HTMLElement ? top.offsetHeight : 0}px`);
}

let limit = Infinity;
setInterval(() => {
  const screen = session.screen;
  if (!screen || !clockRuns(screen.blocks)) return;
  if (door.nowMs() >= limit) void session.refresh();
  limit = nextLimit(screen.blocks, door.nowMs());
  schedule();
}, TICK_MS);
addEventListener('resize', schedule);
addEventListener('pagehide', () => fields.flushAll());

void session.open().then(() => {
  void watchCharge((percent) => void session.charged(percent));
  watchNetwork((metered) => void session.carried(metered));
});
session.watch();
schedule();
