// Takes a photograph that the core asked for: a file, the device's camera app, or a camera of the computer.

import { DoorFault } from '../door.js';
import { say } from '../words.js';
import { placeAtHand } from './place.js';

/** @typedef {import('../screen').Outcome} Outcome */
/** @typedef {{ id: string, unit: string, slot: string, title: string, show: string }} Wanted */
/** @typedef {'choose' | 'starting' | 'camera' | 'saving' | 'waiting'} Stage */

const AGAIN_MS = 2000;

export class Photos {
  /**
   * @param {import('../screen').Door} door
   * @param {{ changed: () => void, done: (id: string, outcome: Outcome) => void }} on
   */
  constructor(door, on) {
    this.door = door;
    this.on = on;
    /** @type {Wanted[]} */
    this.queue = [];
    /** @type {Stage} */
    this.stage = 'choose';
    /** What went wrong, in words. @type {string | null} */
    this.problem = null;
    /** @type {MediaStream | null} */
    this.stream = null;
  }

  /** The photograph that is wanted first. */
  get wanted() {
    return this.queue[0] ?? null;
  }

  /** @param {Wanted} wanted */
  want(wanted) {
    if (this.queue.some((each) => each.id === wanted.id)) return;
    this.queue.push(wanted);
    this.on.changed();
  }

  /** @param {Blob} bytes */
  async take(bytes) {
    const wanted = this.wanted;
    if (!wanted || this.stage === 'saving' || this.stage === 'waiting') return;
    this.stopCamera();
    this.to('saving', null);
    const place = placeAtHand();
    for (;;) {
      try {
        await this.door.incoming(wanted.id, bytes);
        break;
      } catch (reason) {
        if (!(reason instanceof DoorFault)) throw reason;
        if (reason.kind === 'problem' || reason.kind === 'shut') {
          const key = problemKey(reason.problem);
          this.to('choose', key ? say(key) : (reason.problem?.detail ?? say('shell-failed')));
          return;
        }
        this.to('waiting', null);
        await new Promise((done) => setTimeout(done, AGAIN_MS));
        if (this.wanted !== wanted) return;
      }
    }
    // The picture stays before the eyes until the core has it.
    this.on.done(wanted.id, { outcome: 'photo', place: await place });
  }

  cancel() {
    const wanted = this.wanted;
    if (!wanted || this.stage === 'saving') return;
    this.settled(wanted.id);
    this.on.done(wanted.id, { outcome: 'cancelled' });
  }

  /** The core has heard how a request ended, or could not take it and says why. @param {string} id */
  settled(id) {
    if (!this.queue.some((each) => each.id === id)) return;
    this.stopCamera();
    this.queue = this.queue.filter((each) => each.id !== id);
    this.to('choose', null);
  }

  async startCamera() {
    this.to('starting', null);
    try {
      const video = { facingMode: 'environment', width: { ideal: 4096 }, height: { ideal: 3072 } };
      this.stream = await navigator.mediaDevices.getUserMedia({ video, audio: false });
      this.to('camera', null);
    } catch (reason) {
      const denied = reason instanceof DOMException && reason.name === 'NotAllowedError';
      this.to('choose', say(denied ? 'shell-camera-denied' : 'shell-camera-none'));
    }
  }

  /** @param {HTMLVideoElement} video */
  shutter(video) {
    const canvas = document.createElement('canvas');
    canvas.width = video.videoWidth;
    canvas.height = video.videoHeight;
    canvas.getContext('2d')?.drawImage(video, 0, 0);
    canvas.toBlob((bytes) => (bytes ? void this.take(bytes) : this.to('choose', say('shell-camera-none'))), 'image/jpeg', 0.93);
  }

  stopCamera() {
    for (const track of this.stream?.getTracks() ?? []) track.stop();
    this.stream = null;
  }

  /** @param {Stage} stage @param {string | null} problem */
  to(stage, problem) {
    this.stage = stage;
    this.problem = problem;
    this.on.changed();
  }
}

/**
 * The words for a kind of problem that the shell knows.
 * @param {import('../screen').Problem | null} problem
 */
export function problemKey(problem) {
  const kind = problem?.type.split('/').pop() ?? '';
  return PROBLEMS.has(kind) ? `shell-problem-${kind}` : null;
}

/** The kinds that the process itself answers with. */
const PROBLEMS = new Set(['too-large', 'disk-full', 'cut-short']);
