// Small drawings of our own. They are never the only sign: words stand beside each.

import { h } from './dom.js';

/** Strokes in a box of 24 by 24. @type {Record<string, string>} */
const SHAPES = {
  done: 'M4.5 12.5l5 5 10-11',
  open: 'M12 4a8 8 0 1 1 0 16 8 8 0 0 1 0-16z',
  gated: 'M6 11h12v9H6zM8.5 11V8a3.5 3.5 0 0 1 7 0v3',
  running: 'M12 4a8 8 0 1 1 0 16 8 8 0 0 1 0-16zM12 8v4.5l3 2',
  skipped: 'M5 6l7 6-7 6M13 6l6 6-6 6',
  attention: 'M12 3l9 9-9 9-9-9zM12 8v5M12 15.7v.3',
  danger: 'M8.3 3h7.4L21 8.3v7.4L15.7 21H8.3L3 15.7V8.3zM12 7.5v5.5M12 16.2v.3',
  quiet: 'M7 12h10',
  plain: 'M12 10.5a1.5 1.5 0 1 1 0 3 1.5 1.5 0 0 1 0-3z',
  primary: 'M5 12h13M13 6l6 6-6 6',
  kept: 'M6.5 4h11v16l-5.5-4-5.5 4z',
  menu: 'M4 7h16M4 12h16M4 17h16',
  close: 'M6 6l12 12M18 6L6 18',
  camera: 'M4 8h3.5l1.5-2.5h6L16.5 8H20v11H4zM12 10a3.5 3.5 0 1 1 0 7 3.5 3.5 0 0 1 0-7z',
  picture: 'M4 5h16v14H4zM4 16l5-5 4 4 3-3 4 4M15.5 8.500v.2',
  bell: 'M6 17h12l-1.5-2.500V10a4.5 4.5 0 0 0-9 0v4.500zM10.5 20h3',
  leave: 'M10 5H5v14h14v-5M13 5h6v6M19 5l-8 8',
};

/**
 * @param {string} name
 * @param {string} [className]
 */
export function glyph(name, className = 'glyph') {
  return icon(SHAPES[name] ?? SHAPES['plain'] ?? '', className);
}

/** @param {string} d @param {string} className */
export function icon(d, className) {
  return h('svg', { class: className, viewBox: '0 0 24 24', 'aria-hidden': 'true', focusable: 'false' }, h('path', { d }));
}
