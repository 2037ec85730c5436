// The conversation with the core: one call at a time, in order, repeated under the same id until it is answered.

import { DoorFault } from './door.js';

/** @typedef {import('./screen').Door} Door */
/** @typedef {import('./screen').Action} Action */
/** @typedef {import('./screen').Outcome} Outcome */
/** @typedef {import('./screen').Problem} Problem */
/** @typedef {import('./screen').Screen} Screen */
/** @typedef {import('./screen').Effect} Effect */
/** @typedef {import('./screen').Turn} Turn */
/** @typedef {{ id: string, action: Action } | { id: string, outcome: Outcome }} Job */
/** @typedef {'opening' | 'ok' | 'lost' | 'elsewhere' | 'shut'} Link */

/** How long to wait before a lost process is asked again, milliseconds. */
const AGAIN_MS = 2000;
/** How often the screen is read without having been touched, milliseconds. */
const POLL_MS = 5000;

export class Session {
  /**
   * @param {Door} door
   * @param {{
   *   changed: () => void, effect: (effect: Effect) => void, acknowledged: (action: Action) => void,
   *   settled: (effectId: string) => void, language: () => void,
   * }} on
   */
  constructor(door, on) {
    this.door = door;
    this.on = on;
    /** @type {Screen | null} */
    this.screen = null;
    /** @type {Link} */
    this.link = 'opening';
    /** What went wrong with one call, and the call, for trying again. @type {{ problem: Problem, job: Job | null } | null} */
    this.trouble = null;
    /** @type {Job[]} */
    this.jobs = [];
    this.running = false;
    /** Grows with every act, so that a screen read before it is not drawn over its answer. */
    this.age = 0;
  }

  /** Makes this window the one that holds the door. */
  async open() {
    this.link = this.screen ? this.link : 'opening';
    try {
      this.accept(await this.door.open());
    } catch (reason) {
      this.fault(reason, null);
      if (this.isLost()) setTimeout(() => this.open(), AGAIN_MS);
      return;
    }
    void this.run();
  }

  /** Reads the screen now and then, so that clocks and the outbox are true. */
  watch() {
    setInterval(() => this.refresh(), POLL_MS);
    document.addEventListener('visibilitychange', () => this.refresh());
  }

  async refresh() {
    if (document.hidden || this.running || !this.screen || this.link !== 'ok') return;
    const age = this.age;
    try {
      const turn = await this.door.screen();
      if (age === this.age) this.accept(turn);
    } catch (reason) {
      this.fault(reason, null);
      if (this.isLost()) void this.recover();
    }
  }

  /** @param {Action} action */
  act(action) {
    if (action.do === 'draft' || action.do === 'enter') {
      // What waits and is overtaken by newer text of the same field need not be sent; the call under way stays.
      const waiting = this.running ? 1 : 0;
      this.jobs = this.jobs.filter((job, at) => at < waiting || !overtaken(job, action));
    } else if (this.waits(action)) return;
    this.push({ id: crypto.randomUUID(), action });
  }

  /** @param {string} effectId @param {Outcome} outcome */
  done(effectId, outcome) {
    this.push({ id: effectId, outcome });
  }

  /** Tells the core how much charge is left: it warns where that could hurt. @param {number | null} percent */
  async charged(percent) {
    try {
      const turn = await this.door.charged(percent);
      this.age += 1;
      this.accept(turn);
    } catch {
      // Told again when it changes.
    }
  }

  /** Tells the core whether the network is paid by what goes over it. @param {boolean} metered */
  async carried(metered) {
    try {
      const turn = await this.door.carried(metered);
      this.age += 1;
      this.accept(turn);
    } catch {
      // Told again when it changes.
    }
  }

  /** In a rehearsal: goes over a waiting time. A screen read before it is out of date. @param {number} ms */
  async leap(ms) {
    this.age += 1;
    try {
      const turn = await this.door.leap?.(ms);
      if (turn) this.accept(turn);
    } catch {
      await this.refresh();
    }
  }

  /** Whether the same press is still on its way. @param {Action} action */
  waits(action) {
    const wanted = JSON.stringify(action);
    return this.jobs.some((job) => 'action' in job && JSON.stringify(job.action) === wanted);
  }

  tryAgain() {
    const job = this.trouble?.job;
    this.trouble = null;
    if (job) this.push(job);
    this.on.changed();
  }

  putAside() {
    this.trouble = null;
    this.on.changed();
  }

  /** @param {Job} job */
  push(job) {
    this.jobs.push(job);
    this.age += 1;
    this.on.changed();
    void this.run();
  }

  async run() {
    if (this.running || this.link === 'elsewhere' || this.link === 'shut') return;
    this.running = true;
    let wasLost = false;
    for (let job = this.jobs[0]; job; job = this.jobs[0]) {
      try {
        const turn = await ('action' in job ? this.door.act(job.id, job.action) : this.door.done(job.id, job.outcome));
        this.jobs.shift();
        if ('action' in job) this.on.acknowledged(job.action);
        else this.on.settled(job.id);
        this.accept(turn);
      } catch (reason) {
        this.fault(reason, job);
        if (this.isLost()) {
          wasLost = true;
          await rest(AGAIN_MS);
        } else if (this.link === 'ok') {
          this.jobs.shift();
          if ('outcome' in job) this.on.settled(job.id);
        } else break;
      }
    }
    this.running = false;
    // A process that was started again may hold requests that this page has never seen.
    if (wasLost && this.link === 'ok') await this.open();
    this.on.changed();
  }

  isLost() {
    return this.link === 'lost';
  }

  /** Asks until the process answers. */
  async recover() {
    while (this.isLost() && !this.running) {
      await rest(AGAIN_MS);
      if (this.running) return;
      try {
        this.accept(await this.door.screen());
        this.accept(await this.door.open());
      } catch (reason) {
        this.fault(reason, null);
      }
    }
  }

  /** @param {Turn} turn */
  accept(turn) {
    const language = this.screen?.language;
    this.screen = turn.screen;
    this.link = 'ok';
    for (const effect of turn.effects) this.on.effect(effect);
    if (language !== turn.screen.language) this.on.language();
    this.on.changed();
  }

  /** @param {unknown} reason @param {Job | null} job */
  fault(reason, job) {
    if (!(reason instanceof DoorFault)) throw reason;
    if (reason.kind === 'problem' && reason.problem) {
      this.link = 'ok';
      this.trouble = { problem: reason.problem, job };
    } else if (reason.kind !== 'problem') this.link = reason.kind;
    this.on.changed();
  }
}

/** @param {Job} job @param {Action} newer */
function overtaken(job, newer) {
  return 'action' in job && job.action.do === 'draft' && job.action['field'] === newer['field'];
}

/** @param {number} ms */
const rest = (ms) => new Promise((done) => setTimeout(done, ms));
