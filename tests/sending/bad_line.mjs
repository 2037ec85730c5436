// Two network namespaces with a bad line between them: by the kernel's own netem where it has one, else packet by packet by
// bad_line.py. Needs root, `ip` and `tc` (Debian: iproute2).

import { execFileSync } from "node:child_process";
import path from "node:path";
import { fileURLToPath } from "node:url";

import { start } from "../browser/lib/coilside.mjs";

const HERE = path.dirname(fileURLToPath(import.meta.url));
const FAR = "10.77.0.2";

/** @param {string} program @param {string[]} args */
const sh = (program, ...args) => execFileSync(program, args, { encoding: "utf8", stdio: ["ignore", "pipe", "pipe"] });

export class BadLine {
  /** @param {{ lossPercent: number, delayMs: number, rateBit: number, seed: number }} how at each of its two ends */
  constructor(how) {
    this.how = how;
    this.near = `near-${process.pid}`;
    this.far = `far-${process.pid}`;
    /** What makes it bad. */
    this.by = "";
    /** @type {import("../browser/lib/coilside.mjs").Started | null} */
    this.line = null;
    /** @type {import("../browser/lib/coilside.mjs").Started[]} */
    this.relays = [];
    for (const namespace of [this.near, this.far]) {
      sh("ip", "netns", "add", namespace);
      sh("ip", "-n", namespace, "link", "set", "lo", "up");
    }
  }

  /** Starts a program in a namespace. @param {string} namespace @param {string[]} command */
  static within(namespace, command) {
    return start(["netns", "exec", namespace, ...command], { program: "/sbin/ip" });
  }

  /** Lays the line. */
  async lay() {
    const { lossPercent, delayMs, rateBit, seed } = this.how;
    const why = this.layByTheKernel();
    if (why === "") {
      this.by = "the kernel's netem";
      return;
    }
    const how = [lossPercent, delayMs, rateBit, seed].map(String);
    this.line = await start([path.join(HERE, "bad_line.py"), this.near, this.far, ...how], { program: "python3" });
    this.by = `bad_line.py, packet by packet in user space: no netem here (${why})`;
  }

  /** @returns {string} why it could not; empty where it could */
  layByTheKernel() {
    const { lossPercent, delayMs, rateBit } = this.how;
    const ends = [this.near, this.far].map((namespace, at) => ({ namespace, name: `cs${process.pid}${at}`, address: `10.77.0.${at + 1}` }));
    try {
      const [one, other] = ends.map(({ name, namespace }) => [name, "netns", namespace]);
      sh("ip", "link", "add", ...(one ?? []), "type", "veth", "peer", "name", ...(other ?? []));
      for (const { namespace, name, address } of ends) {
        const netem = ["netem", "loss", `${lossPercent}%`, "delay", `${delayMs}ms`, "rate", `${rateBit}bit`];
        sh("tc", "-n", namespace, "qdisc", "add", "dev", name, "root", ...netem);
        sh("ip", "-n", namespace, "addr", "add", `${address}/24`, "dev", name);
        sh("ip", "-n", namespace, "link", "set", name, "up");
      }
      return "";
    } catch (reason) {
      for (const { namespace, name } of ends) {
        try {
          sh("ip", "-n", namespace, "link", "del", name);
        } catch {
          // It was not made, or went with the other one.
        }
      }
      return String(/** @type {any} */ (reason).stderr ?? reason).trim();
    }
  }

  /** Where the near side reaches a port of the far side's own machine. @param {number} port @returns {Promise<string>} */
  async reach(port) {
    this.relays.push(await BadLine.within(this.far, ["node", path.join(HERE, "relay.mjs"), `0.0.0.0:${port + 1}`, `127.0.0.1:${port}`]));
    return `http://${FAR}:${port + 1}`;
  }

  /** A socket's file by which a port of the near side's own machine is reached from here. @param {number} port @param {string} file */
  async door(port, file) {
    this.relays.push(await BadLine.within(this.near, ["node", path.join(HERE, "relay.mjs"), file, `127.0.0.1:${port}`]));
    return file;
  }

  /** Ends all of it. @returns {Promise<string[]>} what the line says that it carried and lost */
  async end() {
    await this.line?.stop();
    for (const relay of this.relays) await relay.kill9();
    for (const namespace of [this.near, this.far]) sh("ip", "netns", "del", namespace);
    return this.line?.lines.slice(1) ?? [];
  }
}
