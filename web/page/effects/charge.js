// How much charge this device has left, where the browser tells it.

/** @typedef {{ level: number, charging: boolean, addEventListener: (kind: string, listener: () => void) => void }} Battery */

/**
 * Asks for the charge in per cent now and whenever it changes; null while it is charging or where nobody can tell.
 * @param {(percent: number | null) => void} told
 */
export async function watchCharge(told) {
  const asks = /** @type {{ getBattery?: () => Promise<Battery> }} */ (navigator);
  const battery = await asks.getBattery?.().catch(() => null);
  if (!battery) return;
  const tell = () => told(battery.charging ? null : Math.round(battery.level * 100));
  for (const kind of ['levelchange', 'chargingchange']) battery.addEventListener(kind, tell);
  tell();
}
