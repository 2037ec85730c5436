// Pictograms for the kinds of hazard that a caution can name. Simple line drawings of our own in a box of 24 by 24.

import { glyph, icon } from './glyphs.js';

/** @type {Record<string, string>} */
const SIGNS = {
  shock: 'M13.5 2.5L5.5 13.5h5l-1 8 8.5-11.5h-5.5z',
  'stored-energy': 'M3 12h6M9 5v14M15 5v14M15 12h6',
  acid: 'M9 3h6M10 3v6l-5.5 9.5a1.7 1.7 0 0 0 1.5 2.5h12a1.7 1.7 0 0 0 1.5-2.5L14 9V3M7.5 15h9M11 18.200v.2M14 17.5v.2',
  alkali: 'M4 7h16M6 7v11a3 3 0 0 0 3 3h6a3 3 0 0 0 3-3V7M8 3.5h8M9.5 12h5M9.5 16h5',
  spray: 'M3 14l5-5 3 3-5 5zM9.5 10.5l3-3M14.5 6.5l5-3.5M15.5 8.5h6M14.5 10.5l5 3.5M13 4l1.5-2.5',
  hot: 'M5 21h14M8 17c-2-2 2-3.5 0-6s1-3.5 0-5.5M12 17c-2-2 2-3.5 0-6s1-3.5 0-5.5M16 17c-2-2 2-3.5 0-6s1-3.5 0-5.5',
  fan: 'M12 10.5a1.5 1.5 0 1 1 0 3 1.5 1.5 0 0 1 0-3zM12 10.5c-3-3-2-7.5 1-7.5 2.5 0 2.5 4-1 7.5zM13.3 12.700c4.2-.8 7.5 2.3 6.1 4.8-1.3 2.2-5 .6-6.1-4.8zM10.7 12.700c-1.2 4-5.5 5.6-6.9 3.1-1.2-2.2 2-4.3 6.9-3.100z',
  flammable: 'M12 21.5c-4 0-6.5-2.7-6.5-6 0-4.5 4.5-6 4-12 4 2 5.5 5 5 8 1-.5 1.8-1.3 2-2.5 1.5 2 2 4 2 6 0 3.8-2.5 6.5-6.5 6.5zM12 21.5c-1.7 0-2.7-1.2-2.7-2.8 0-1.7 1.7-2.4 2.2-4.4 1.8 1.2 3.2 2.7 3.2 4.400s-1 2.8-2.7 2.8z',
  height: 'M7 3v18M15 3v18M7 7h8M7 12h8M7 17h8M20 8v8M18 14l2 2.5 2-2.5',
  scald: 'M4 6h9a4 4 0 0 1 4 4v1M4 10h7a2 2 0 0 1 2 2M15 14.5c-1.3 1.7-2 2.6-2 3.8a2.5 2.5 0 0 0 5 0c0-1.2-.7-2.1-2-3.8zM20.5 5c-1-1 1-1.8 0-3M7 4V2.5',
  backflow: 'M3 17h18M3 12h7M21 12h-7M10 9.5v5M14 9.5v5M17 6H9a3 3 0 0 0-3 0M9 3L6 6l3 3',
  sharp: 'M4 20V9l3-5 3 5v11M10 20V9l3-5 3 5v11M16 20V9l2-3.5L20 9v11',
  refrigerant: 'M12 2.5v19M4 7l16 10M20 7L4 17M9.5 4L12 6.5 14.5 4M9.5 20l2.5-2.5 2.5 2.5',
  eye: 'M2.5 11C5 7 8.3 5 12 5s7 2 9.5 6c-2.5 4-5.8 6-9.5 6s-7-2-9.5-6zM12 8.5a2.5 2.5 0 1 1 0 5 2.5 2.5 0 0 1 0-5zM12 20v2M7 19.5l-.5 2M17 19.5l.5 2',
  gas: 'M6.5 15a4 4 0 0 1 .5-8 5.5 5.5 0 0 1 10.3 1.5A3.3 3.3 0 0 1 17.5 15zM7 18.5h6M10 21.5h7M16 18.5h1.5',
  burn: 'M12 21.5c-4 0-6.5-2.700-6.5-6 0-4.5 4.5-6 4-12 4 2 5.5 5 5 8 1-.5 1.8-1.3 2-2.5 1.5 2 2 4 2 6 0 3.8-2.5 6.5-6.5 6.5z',
  chlorine: 'M5 9a3.5 3.5 0 0 1 1-6.800 5 5 0 0 1 9 1.300A3 3 0 0 1 16 9zM8 13v3M12 12v3M16 13v3M10 18.500v3M14 18.500v3',
  'high-pressure': 'M12 5a8 8 0 1 1 0 16 8 8 0 0 1 0-16zM12 13l4.500-4M9.500 2.500h5M12 2.500V5M7.500 16h1M15.500 16h1',
  suffocation: 'M12 3.500a3 3 0 1 1 0 6 3 3 0 0 1 0-6zM6 21v-4a6 6 0 0 1 12 0v4M2.500 14h2M2 18h2M19.500 14h2M20 18h2M9.500 6.500h5',
  disposal: 'M4 7h16M9.5 7V4h5v3M6 7l1 14h10l1-14M10 11v6M14 11v6',
};

/** The drawing for a kind of hazard, or the general sign. @param {string} sign */
export function signOf(sign) {
  const shape = SIGNS[sign.replace(/^emergency-/, '')];
  return shape ? icon(shape, 'sign') : glyph('danger', 'sign');
}
