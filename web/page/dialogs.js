// What lies above the screen: a photograph to take, an alarm that rings, the menu.

import { drawing, picture } from './blocks/shot.js';
import { unitLetter } from './blocks/text.js';
import { h } from './dom.js';
import { glyph } from './glyphs.js';
import { ways as menuWays } from './layout.js';
import { say } from './words.js';

/** @typedef {import('./ui').Ui} Ui */
/** @typedef {import('./screen').Block} Block */
/** @typedef {import('./screen').PhotoView} PhotoView */
/** @typedef {import('./effects/photo.js').Photos} Photos */

/** @param {HTMLDialogElement} dialog */
const showModal = (dialog) => {
  if (dialog.isConnected && !dialog.open) dialog.showModal();
};

/** @param {Photos} photos @param {Block[]} screen @param {Ui} ui @param {boolean} lost */
export function photoDialog(photos, screen, ui, lost) {
  const wanted = photos.wanted;
  if (!wanted) return null;
  const block = shotOf(screen, wanted.slot);
  const before = block?.before ?? null;
  const example = before || photos.stage === 'camera' ? null : (block?.drawing ?? null);
  const busy = photos.stage === 'saving' || photos.stage === 'waiting' || photos.stage === 'starting';
  return h(
    'dialog',
    {
      key: `photo:${wanted.id}`,
      class: `sheet photo-sheet stage-${photos.stage}`,
      'aria-labelledby': 'photo-title',
      mount: showModal,
      on: {
        /** @param {Event} event */
        cancel: (event) => {
          event.preventDefault();
          photos.cancel();
        },
      },
    },
    h(
      'div',
      { class: 'sheet-head' },
      wanted.unit ? unitLetter(wanted.unit) : null,
      h('div', null, h('h2', { id: 'photo-title' }, wanted.title), wanted.show ? h('p', { class: 'shot-show' }, wanted.show) : null),
    ),
    photos.problem ? h('p', { class: 'problem', role: 'alert' }, glyph('danger'), h('span', null, photos.problem)) : null,
    h(
      'div',
      { class: before ? 'finder with-before' : 'finder' },
      photos.stage === 'camera' ? video(photos) : null,
      before ? picture(before, ui, say('shell-before-picture')) : null,
      example ? drawing(example) : null,
    ),
    busy ? h('p', { class: 'wait', role: 'status' }, h('span', { class: 'busy', 'aria-hidden': 'true' }), h('span', null, say(waitWords(photos.stage, lost)))) : null,
    h(
      'div',
      { class: 'row' },
      photos.stage === 'camera' ? shutter(photos) : busy ? null : ways(photos),
      photos.stage === 'saving' ? null : cancel(photos),
    ),
  );
}

/** @param {Photos} photos */
const video = (photos) =>
  h('video', {
    key: 'video', class: 'video', autoplay: true, playsinline: true, muted: true, 'aria-label': say('shell-camera-view'),
    /** @param {HTMLVideoElement} element */
    mount: (element) => {
      element.srcObject = photos.stream;
      void element.play().catch(() => undefined);
    },
  });

/** @param {Photos} photos */
function shutter(photos) {
  const shoot = () => {
    const element = document.querySelector('video');
    if (element && element.videoWidth > 0) photos.shutter(element);
  };
  return h(
    'button',
    { key: 'shutter', type: 'button', class: 'button main tone-primary', autofocus: true, on: { click: shoot } },
    glyph('camera'),
    h('span', { class: 'label' }, say('shell-shutter')),
  );
}

/** @param {Photos} photos */
function ways(photos) {
  const cameraThere = 'mediaDevices' in navigator;
  return [
    h(
      'label',
      { key: 'file', class: 'button main tone-primary file' },
      glyph('picture'),
      h('span', { class: 'label' }, say('shell-file')),
      h('input', {
        type: 'file', accept: 'image/*', capture: 'environment', class: 'file-input', id: 'photo-file', autofocus: true,
        on: {
          /** @param {Event} event */
          change: (event) => {
            const file = /** @type {HTMLInputElement} */ (event.currentTarget).files?.[0];
            if (file) void photos.take(file);
          },
        },
      }),
    ),
    cameraThere
      ? h(
          'button',
          { key: 'camera', type: 'button', class: 'button', on: { click: () => void photos.startCamera() } },
          glyph('camera'),
          h('span', { class: 'label' }, say('shell-camera')),
        )
      : null,
  ];
}

/** @param {Photos} photos */
const cancel = (photos) =>
  h('button', { key: 'cancel', type: 'button', class: 'button', on: { click: () => photos.cancel() } }, h('span', { class: 'label' }, say('shell-cancel')));

/** @param {import('./effects/photo.js').Stage} stage @param {boolean} lost */
const waitWords = (stage, lost) =>
  stage === 'starting' ? 'shell-camera-starting' : lost || stage === 'waiting' ? 'shell-photo-waiting' : 'shell-photo-saving';

/** The block of a slot, wherever it stands. @param {Block[]} blocks @param {string} slot @returns {import('./screen').ShotBlock | null} */
function shotOf(blocks, slot) {
  for (const block of blocks) {
    if (block.block === 'shot' && block.slot === slot) return block;
    const inside = block.block === 'step' ? shotOf(block.blocks, slot) : null;
    if (inside) return inside;
  }
  return null;
}

/** @param {import('./effects/alarm.js').Alarms} alarms */
export function alarmDialog(alarms) {
  const alarm = alarms.ringing;
  if (!alarm) return null;
  const stop = () => alarms.stop();
  return h(
    'dialog',
    { key: `alarm:${alarm.id}`, class: 'sheet alarm-sheet', role: 'alertdialog', 'aria-labelledby': 'alarm-text', mount: showModal, on: { close: stop } },
    glyph('bell', 'alarm-bell'),
    h('h2', { id: 'alarm-text' }, alarm.text),
    h('button', { type: 'button', class: 'button main tone-primary', autofocus: true, on: { click: stop } }, h('span', { class: 'label' }, say('shell-alarm-stop'))),
  );
}

/**
 * Ways to other screens.
 * @param {import('./screen').Screen} screen @param {Ui} ui @param {() => void} close
 */
export function menuDialog(screen, ui, close) {
  const leave = { ...ui, press: (/** @type {import('./screen').Action} */ action) => (close(), ui.press(action)) };
  return h(
    'dialog',
    { key: 'menu', class: 'sheet menu-sheet', 'aria-label': say('shell-menu'), mount: showModal, on: { close } },
    h('nav', { class: 'ways', 'aria-label': say('shell-menu') }, menuWays(screen, leave)),
    h('button', { type: 'button', class: 'button', on: { click: close } }, glyph('close'), h('span', { class: 'label' }, say('shell-close'))),
  );
}
