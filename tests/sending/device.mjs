// A device without a browser: the local process `coilside field`, whose door is called here as the page calls it.

import { randomUUID } from "node:crypto";
import { existsSync } from "node:fs";
import http from "node:http";

import { english } from "../browser/lib/words.mjs";

/** How long the process may take for one call on a crowded machine. */
const PATIENCE_MS = 60_000;

/** A picture of 16 times 12 points, drawn by Pillow. */
const PICTURE = Buffer.from("/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDABQODxIPDRQSEBIXFRQYHjIhHhwcHj0sLiQySUBMS0dARkVQWnNiUFVtVkVGZIhlbXd7gYKBTmCNl4x9lnN+gXz/wAALCAAMABABAREA/8QAFQABAQAAAAAAAAAAAAAAAAAABQH/xAAZEAADAAMAAAAAAAAAAAAAAAAABCECAzH/2gAIAQEAAD8AEVU5BlVTkIrrxkGldeMh/9k=", "base64");
/** The most that one comment of a JPEG holds (ITU-T T.81, B.2.4.5: its length is told in two bytes, themselves included). */
const COMMENT_BYTES_MAX = 65_533;

/** A picture that has other bytes than every other one, and about so many: they stand in comments. @param {Buffer} filling */
export function picture(filling) {
  const parts = [PICTURE.subarray(0, 2)];
  for (let at = 0; at < filling.length; at += COMMENT_BYTES_MAX) {
    const comment = filling.subarray(at, at + COMMENT_BYTES_MAX);
    const head = Buffer.from([0xff, 0xfe, 0, 0]);
    head.writeUInt16BE(comment.length + 2, 2);
    parts.push(head, comment);
  }
  return Buffer.concat([...parts, PICTURE.subarray(2)]);
}

/** Has folders of this process made in memory, where the system has such a place: a visit syncs hundreds of times. */
export function inMemory() {
  if (existsSync("/dev/shm")) process.env.TMPDIR = "/dev/shm";
}

export class Device {
  /** @param {string} address as the process prints it @param {string} [socketPath] the way to it, where that is another one */
  constructor(address, socketPath) {
    const url = new URL(address);
    this.host = url.host;
    this.token = url.searchParams.get("t") ?? "";
    this.socketPath = socketPath;
    /** @type {any} */
    this.screen = null;
  }

  /** @param {string} method @param {string} path @param {Buffer | object} [body] @returns {Promise<any>} */
  call(method, path, body) {
    const bytes = Buffer.isBuffer(body) ? body : Buffer.from(body ? JSON.stringify({ window: "test", ...body }) : "");
    const headers = {
      Host: this.host,
      "X-Coilside-Token": this.token,
      "X-Coilside-Window": "test",
      "Content-Type": Buffer.isBuffer(body) ? "application/octet-stream" : "application/json",
      "Content-Length": bytes.length,
    };
    const [host, port] = this.host.split(":");
    const to = this.socketPath ? { socketPath: this.socketPath } : { host, port };
    return new Promise((resolve, reject) => {
      const request = http.request({ ...to, method, path, headers, timeout: PATIENCE_MS }, (answer) => {
        const parts = /** @type {Buffer[]} */ ([]);
        answer.on("data", (part) => parts.push(part));
        answer.on("end", () => {
          const text = Buffer.concat(parts).toString();
          if ((answer.statusCode ?? 0) >= 300) return reject(new Error(`${method} ${path}: ${answer.statusCode} ${text}`));
          const turn = text ? JSON.parse(text) : null;
          if (turn?.screen) this.screen = turn.screen;
          resolve(turn);
        });
      });
      request.on("timeout", () => request.destroy(new Error(`${method} ${path}: no answer`)));
      request.on("error", reject);
      request.end(bytes);
    });
  }

  open() {
    return this.call("POST", "/door/open", {});
  }

  /** @param {object} action @returns {Promise<any>} */
  act(action) {
    return this.call("POST", "/door/act", { action_id: randomUUID(), action });
  }

  /** @param {Buffer} bytes of a photograph of anything */
  async photograph(bytes) {
    const { effects } = await this.act({ do: "shoot", slot: "" });
    const asked = effects.find((/** @type {any} */ effect) => effect.request.ask === "take-photo");
    if (!asked) throw new Error(`no photograph is asked for: ${JSON.stringify(this.screen.notices)}`);
    await this.call("PUT", `/door/incoming/${asked.id.replaceAll("/", "_")}`, bytes);
    await this.call("POST", "/door/done", { effect_id: asked.id, outcome: { outcome: "photo", place: null } });
  }

  /** Waits until the office has given the device its visits. */
  async assigned() {
    const until = Date.now() + PATIENCE_MS;
    for (await this.open(); ; await rest(200)) {
      await this.act({ do: "go", to: "round" });
      const start = find(this.screen, (it) => it?.do === "start-visit");
      if (start) return start;
      if (Date.now() > until) throw new Error("no visit came from the office");
    }
  }

  /**
   * A short visit: photographs of anything, then called away; sealed as what it is.
   * @param {object} start as `assigned` gives it @param {Buffer[]} photographs
   * @returns {Promise<string>} the visit
   */
  async visit(start, photographs) {
    await this.act(start);
    await this.act({ do: "go", to: "photographs" });
    for (const bytes of photographs) await this.photograph(bytes);
    const { effects } = await this.act({ do: "shoot", slot: "" });
    const asked = effects.find((/** @type {any} */ effect) => effect.request.ask === "take-photo");
    await this.call("POST", "/door/done", { effect_id: asked.id, outcome: { outcome: "cancelled" } });
    await this.act({ do: "go", to: "break-off" });
    await this.act({ do: "draft", field: "break-off", text: "Called away" });
    await this.act({ do: "break-off" });
    await this.act({ do: "seal" });
    if (this.screen.title !== english("sealed-title")) throw new Error(`not sealed: ${JSON.stringify(this.screen)}`);
    return asked.id.split("/")[0];
  }

  /** Waits until the screen says that all is safe, as a person would who looks now and then. @param {number} withinMs */
  async safe(withinMs) {
    const until = Date.now() + withinMs;
    for (await this.open(); this.screen.outbox.value !== english("outbox-empty"); await rest(500)) {
      if (Date.now() > until) {
        await this.act({ do: "go", to: "outbox" });
        throw new Error(`not all is safe after ${withinMs} ms: ${JSON.stringify(this.screen.blocks)}`);
      }
      await this.call("GET", "/door/screen");
    }
  }
}

const rest = (/** @type {number} */ ms) => new Promise((done) => setTimeout(done, ms));

/** The first value inside of another one that is as wanted. @param {any} within @param {(it: any) => boolean} wanted @returns {any} */
function find(within, wanted) {
  if (wanted(within)) return within;
  if (typeof within !== "object" || within === null) return undefined;
  for (const inner of Object.values(within)) {
    const found = find(inner, wanted);
    if (found !== undefined) return found;
  }
  return undefined;
}
