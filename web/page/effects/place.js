// Where the device is, if the person allows it.

import { say } from '../words.js';

/** @typedef {import('../screen').PlaceFix} PlaceFix */
/** @typedef {import('../screen').Outcome} Outcome */

/** How long a fix may take, milliseconds. */
const PATIENCE_MS = 20_000;
/** How old a fix may be, milliseconds. */
const AGE_MS = 60_000;

/** Answers the request for the place. @returns {Promise<Outcome>} */
export async function locate() {
  if (!('geolocation' in navigator)) return { outcome: 'failed', why: say('shell-place-none') };
  try {
    return { outcome: 'place', place: await fix(PATIENCE_MS) };
  } catch (reason) {
    const code = /** @type {GeolocationPositionError} */ (reason).code;
    const why = code === 1 ? 'shell-place-denied' : code === 3 ? 'shell-place-late' : 'shell-place-none';
    return { outcome: 'failed', why: say(why) };
  }
}

/** The place for a photograph: only where it was allowed before, and without keeping anybody waiting. */
export async function placeAtHand() {
  try {
    const allowed = await navigator.permissions.query({ name: 'geolocation' });
    return allowed.state === 'granted' ? await fix(2000) : null;
  } catch {
    return null;
  }
}

/** @param {number} timeout @returns {Promise<PlaceFix>} */
function fix(timeout) {
  return new Promise((done, failed) => {
    navigator.geolocation.getCurrentPosition(
      ({ coords, timestamp }) =>
        done({
          latitude_deg: coords.latitude,
          longitude_deg: coords.longitude,
          accuracy_m: coords.accuracy,
          age_ms: Math.max(0, Math.round(Date.now() - timestamp)),
        }),
      failed,
      { enableHighAccuracy: true, timeout, maximumAge: AGE_MS },
    );
  });
}
