// A wire that is cut at random: a TCP proxy that lets some bytes of a connection through and then breaks it off. The same
// seed cuts in the same way, as far as the two sides send in the same pieces.

import net from "node:net";

/** Random numbers from 0 to 1 of a seed (mulberry32, by Tommy Ettinger, public domain; from memory). @param {number} seed */
export function random(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export class CuttingWire {
  /**
   * @param {number} port of the office on this machine @param {number} seed @param {number} bytesMost that a cut lets through
   * @param {number} [spared] the share of connections that are not cut while sending
   */
  constructor(port, seed, bytesMost, spared = 1 / 3) {
    this.cuts = 0;
    this.connections = 0;
    const draw = random(seed);
    this.server = net.createServer((near) => {
      this.connections += 1;
      const far = net.connect(port, "127.0.0.1");
      // Most are cut: while sending, or while the answer comes.
      const left = { up: draw() < spared ? Infinity : draw() * bytesMost, down: draw() < 1 / 8 ? draw() * 300 : Infinity };
      const end = () => (near.destroy(), far.destroy());
      const carry = (from, to, way) =>
        from.on("data", (bytes) => {
          const fits = bytes.subarray(0, Math.max(0, Math.floor(left[way]))); // nothing goes through behind a cut
          left[way] -= bytes.length;
          if (fits.length) to.write(fits);
          if (left[way] <= 0 && !near.destroyed) {
            this.cuts += 1;
            setTimeout(end, 1); // what was let through arrives first
          }
        });
      carry(near, far, "up");
      carry(far, near, "down");
      for (const side of [near, far]) side.on("error", end).on("close", end);
    });
  }

  /** @returns {Promise<number>} its port */
  listen() {
    return new Promise((resolve) => this.server.listen(0, "127.0.0.1", () => resolve(this.server.address().port)));
  }

  close() {
    this.server.close();
  }
}

/** A wire that carries so many bytes in a second, and that a test takes down and puts up again. */
export class SlowWire {
  /** @param {number} port of the office on this machine @param {number} bytesPerSecond towards the office */
  constructor(port, bytesPerSecond) {
    this.isUp = true;
    /** When it was last put up, milliseconds. */
    this.upSince = Date.now();
    /** @type {Set<() => void>} */
    this.ends = new Set();
    this.server = net.createServer((near) => {
      if (!this.isUp) return void near.destroy();
      const far = net.connect(port, "127.0.0.1");
      const end = () => (near.destroy(), far.destroy(), this.ends.delete(end));
      this.ends.add(end);
      for (const side of [near, far]) side.on("error", end).on("close", end);
      far.pipe(near);
      near.on("data", (bytes) => {
        far.write(bytes);
        near.pause();
        setTimeout(() => near.resume(), (bytes.length / bytesPerSecond) * 1000);
      });
    });
  }

  /** @returns {Promise<number>} its port */
  listen() {
    return new Promise((resolve) => this.server.listen(0, "127.0.0.1", () => resolve(this.server.address().port)));
  }

  /** Breaks every connection off, and lets none through until `mend`. */
  cut() {
    this.isUp = false;
    for (const end of this.ends) end();
  }

  mend() {
    this.isUp = true;
    this.upSince = Date.now();
  }

  close() {
    this.cut();
    this.server.close();
  }
}
