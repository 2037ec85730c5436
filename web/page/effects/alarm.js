// Calls the person at a time: by sound, vibration, a message of the system and the title, until it is answered.

import { say } from '../words.js';

/** @typedef {{ id: string, atMs: number, text: string }} Alarm */

/** How often waiting alarms are looked at, milliseconds. */
const LOOK_MS = 500;
/** How often a ringing alarm sounds, milliseconds. */
const RING_MS = 1600;

export class Alarms {
  /**
   * @param {{ changed: () => void, nowMs: () => number, stillWanted: (id: string) => Promise<boolean>, woken: (id: string) => void }} on
   */
  constructor(on) {
    this.on = on;
    /** @type {Map<string, Alarm>} */
    this.waiting = new Map();
    /** The alarm that rings now. @type {Alarm | null} */
    this.ringing = null;
    /** Whether it is being asked if a due alarm is still wanted: until then nothing of it is seen or heard. */
    this.asking = false;
    /** What rang on this page, so that one handed out again before its answer arrived stays silent. @type {Set<string>} */
    this.rung = new Set();
    /** @type {AudioContext | null} */
    this.audio = null;
    this.ring = 0;
    this.title = '';
    setInterval(() => this.look(), LOOK_MS);
    // A browser lets a page sound only after it was touched.
    for (const kind of ['pointerdown', 'keydown']) addEventListener(kind, () => this.unlock(), { passive: true });
  }

  /** @param {Alarm} alarm */
  set(alarm) {
    if (!this.rung.has(alarm.id)) this.waiting.set(alarm.id, alarm);
  }

  /** What to say below a waiting time, and whether a message of the system can still be allowed. */
  line() {
    if (this.waiting.size === 0) return null;
    const messages = 'Notification' in window ? Notification.permission : 'denied';
    const silent = this.audio?.state !== 'running';
    /** @type {string} */
    let text = say('shell-alarm-set');
    if (silent) text = say('shell-alarm-silent');
    else if (messages === 'denied') text = say('shell-alarm-denied');
    const allow = messages === 'default' ? () => void Notification.requestPermission().then(this.on.changed) : null;
    return { text, allow };
  }

  unlock() {
    if (this.audio?.state === 'running' || !('AudioContext' in window)) return;
    this.audio ??= new AudioContext();
    void this.audio.resume().then(this.on.changed);
  }

  async look() {
    if (this.ringing || this.asking) return;
    const due = [...this.waiting.values()].find((alarm) => alarm.atMs <= this.on.nowMs());
    if (!due) return;
    // An alarm whose step ended or was taken back in the meantime stays silent.
    this.asking = true;
    const wanted = await this.on.stillWanted(due.id);
    this.asking = false;
    this.waiting.delete(due.id);
    if (!wanted) return;
    this.begin(due);
    this.on.woken(due.id);
    this.on.changed();
  }

  /** @param {Alarm} alarm */
  begin(alarm) {
    this.ringing = alarm;
    this.rung.add(alarm.id);
    this.title = document.title;
    let beat = 0;
    const strike = () => {
      this.sound();
      if (navigator.userActivation?.hasBeenActive) navigator.vibrate?.([300, 150, 300]);
      document.title = beat++ % 2 ? this.title : `● ${alarm.text}`;
    };
    strike();
    this.ring = setInterval(strike, RING_MS);
    if ('Notification' in window && Notification.permission === 'granted') {
      try {
        new Notification(alarm.text, { tag: alarm.id, requireInteraction: true });
      } catch {
        // Some phones allow it only to a service worker; the sound and the page are there.
      }
    }
  }

  stop() {
    clearInterval(this.ring);
    navigator.vibrate?.(0);
    document.title = this.title;
    this.ringing = null;
    this.on.changed();
  }

  /** Two rising tones, three times. */
  sound() {
    const audio = this.audio;
    if (!audio || audio.state !== 'running') return;
    for (let at = 0; at < 3; at += 1) {
      this.tone(audio, 740, audio.currentTime + at * 0.4);
      this.tone(audio, 988, audio.currentTime + at * 0.4 + 0.16);
    }
  }

  /** @param {AudioContext} audio @param {number} hertz @param {number} from */
  tone(audio, hertz, from) {
    const tone = audio.createOscillator();
    const loud = audio.createGain();
    tone.type = 'square';
    tone.frequency.value = hertz;
    loud.gain.setValueAtTime(0.25, from);
    loud.gain.exponentialRampToValueAtTime(0.001, from + 0.15);
    tone.connect(loud).connect(audio.destination);
    tone.start(from);
    tone.stop(from + 0.16);
  }
}
