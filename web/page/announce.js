// What must be heard as well as seen.

/** @typedef {import('./screen').Screen} Screen */

/** The notices that were told last. */
let noticed = '';

/** Says new notices aloud, and brings them into sight unless somebody is typing. @param {Screen} screen @param {boolean} turned */
export function notice(screen, turned) {
  const told = screen.notices.map((each) => [each.title, ...each.lines].join('. '));
  const all = told.join(' ');
  if (all === noticed) return;
  noticed = all;
  const urgent = screen.notices.some((each) => each.tone === 'danger' || each.tone === 'attention');
  const region = document.getElementById(urgent ? 'urgent' : 'polite');
  if (region) region.textContent = all;
  const typing = document.activeElement?.matches('input, textarea') ?? false;
  const first = document.querySelector('.notice');
  if (all && !turned && !typing && first instanceof HTMLElement && !document.querySelector('dialog[open]')) {
    first.focus({ preventScroll: true });
    first.scrollIntoView({ block: 'nearest' });
  }
}
