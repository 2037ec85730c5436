// The door to the core through the local process. The only module that speaks HTTP.

/** @typedef {import('./screen').Door} Door */
/** @typedef {import('./screen').Problem} Problem */

/**
 * Why a call did not succeed. `lost`: no answer. `elsewhere`: another window holds the door. `shut`: the address has no
 * valid token. `problem`: the process said what is wrong.
 */
export class DoorFault extends Error {
  /** @param {'lost' | 'elsewhere' | 'shut' | 'problem'} kind @param {Problem | null} problem */
  constructor(kind, problem) {
    super(problem?.title ?? kind);
    this.kind = kind;
    this.problem = problem;
  }
}

const KEPT = 'coilside-token';
/** How long a call may take before the process counts as lost, milliseconds. */
const PATIENCE_MS = 15_000;
/** The same for the bytes of a photograph. */
const PATIENCE_BYTES_MS = 120_000;

/** Takes the token from the address, keeps it for this tab, and takes it out of sight. */
export function takeToken() {
  const address = new URL(location.href);
  const given = address.searchParams.get('t');
  if (given) {
    sessionStorage.setItem(KEPT, given);
    address.searchParams.delete('t');
    history.replaceState(null, '', address.pathname + address.search + address.hash);
  }
  return sessionStorage.getItem(KEPT) ?? '';
}

/**
 * A window is one load of the page: a reload or a copied tab is another one.
 * @param {string} token
 * @returns {Door}
 */
export function localDoor(token) {
  const window = crypto.randomUUID();
  /** How far the core's time is ahead of this page's, milliseconds. */
  let aheadMs = 0;

  /** @param {string} method @param {string} path @param {BodyInit | null} body @param {number} patienceMs */
  async function call(method, path, body, patienceMs = PATIENCE_MS) {
    /** @type {Record<string, string>} */
    const headers = { 'X-Coilside-Token': token, 'X-Coilside-Window': window };
    if (typeof body === 'string') headers['Content-Type'] = 'application/json';
    /** @type {Response} */
    let answer;
    try {
      answer = await fetch(path, { method, headers, body, cache: 'no-store', signal: AbortSignal.timeout(patienceMs) });
    } catch {
      throw new DoorFault('lost', null);
    }
    const told = Number(answer.headers.get('X-Coilside-Utc-Ms'));
    if (told) aheadMs = told - Date.now();
    if (answer.headers.has('X-Coilside-Rehearsal')) door.leap = leap;
    if (answer.ok) return answer;
    throw await fault(answer);
  }

  /** @template T @param {Promise<Response>} answer @returns {Promise<T>} */
  async function json(answer) {
    const arrived = await answer;
    try {
      return await arrived.json();
    } catch {
      throw new DoorFault('lost', null);
    }
  }

  /** @param {string} path @param {object} fields */
  const post = (path, fields) => call('POST', path, JSON.stringify({ window, ...fields }));

  /** @param {number} ms */
  const leap = (ms) => json(post('/door/leap', { ms: Math.ceil(ms) }));

  /** @type {Door} */
  const door = {
    nowMs: () => Date.now() + aheadMs,
    leap: null,
    open: () => json(post('/door/open', {})),
    act: (actionId, action) => json(post('/door/act', { action_id: actionId, action })),
    done: (effectId, outcome) => json(post('/door/done', { effect_id: effectId, outcome })),
    screen: () => json(call('GET', '/door/screen', null)),
    charged: (percent) => json(post('/door/charge', { percent })),
    carried: (metered) => json(post('/door/network', { metered })),
    words: () => json(call('GET', '/door/words', null)),
    incoming: async (effectId, bytes) => {
      const name = encodeURIComponent(effectId.replaceAll('/', '_'));
      await call('PUT', `/door/incoming/${name}`, bytes, PATIENCE_BYTES_MS);
    },
    preview: async (digest) => {
      try {
        return await (await call('GET', `/door/preview/${encodeURIComponent(digest)}`, null)).blob();
      } catch (reason) {
        throw reason instanceof DoorFault ? reason : new DoorFault('lost', null);
      }
    },
  };
  return door;
}

/** @param {Response} answer */
async function fault(answer) {
  /** @type {Problem | null} */
  const problem = await answer.json().catch(() => null);
  if (answer.status === 401) return new DoorFault('shut', problem);
  if (answer.status === 409) return new DoorFault('elsewhere', problem);
  return new DoorFault('problem', problem ?? { type: 'about:blank', title: answer.statusText, status: answer.status, detail: '' });
}
