// Keeps the display on.

/** @type {WakeLockSentinel | null} */
let awake = null;

/** While a clock runs the display stays on, where the browser can do that. @param {boolean} wanted */
export async function keepAwake(wanted) {
  if (!wanted) {
    await awake?.release();
    awake = null;
  } else if ((!awake || awake.released) && 'wakeLock' in navigator && !document.hidden) {
    try {
      awake = await navigator.wakeLock.request('screen');
    } catch {
      awake = null; // A low battery may refuse it. The alarm rings all the same.
    }
  }
}
