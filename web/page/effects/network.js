// Over what the requests to the office go, where the browser tells it.

/** @typedef {{ type?: string, saveData?: boolean, addEventListener?: (kind: string, listener: () => void) => void }} Carrier */

/**
 * Tells whether the network is paid by what goes over it, or the person wants to save, now and whenever it changes.
 * @param {(metered: boolean) => void} told
 */
export function watchNetwork(told) {
  const carrier = /** @type {{ connection?: Carrier }} */ (navigator).connection;
  if (!carrier) return;
  const tell = () => told(carrier.type === 'cellular' || carrier.saveData === true);
  carrier.addEventListener?.('change', tell);
  tell();
}
