// The demo's village, with its office and its browser shell as two processes that can be stopped and started alone.

import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, renameSync, rmSync, statSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import path from "node:path";

import { PROGRAM, ROOT, run, start } from "./coilside.mjs";

/** Where the demo's due visit is: `office/src/demo/scenario.rs`. */
export const SITE = { latitude: 1.2345, longitude: 2.3456 };

/** A debug build on a busy machine draws the village slowly. */
const SET_UP_MS = 120_000;

const VILLAGES = path.join(ROOT, "target/browser-villages");

/** @typedef {import("./coilside.mjs").Started} Started */

export class Village {
  /** @param {string} folder @param {number} port the office's, always the same */
  constructor(folder, port) {
    this.folder = folder;
    this.port = port;
    /** @type {Started | null} */
    this.office = null;
    /** @type {Started | null} */
    this.field = null;
  }

  /** A village of its own, drawn by the program. */
  static async drawn() {
    const folder = mkdtempSync(path.join(tmpdir(), "coilside-village-"));
    cpSync(await drawing(), folder, { recursive: true });
    // Villages side by side must not be heirs of one address: the page of one would find the program of another behind it.
    rmSync(path.join(folder, "field/address.json"));
    return new Village(folder, await freePort());
  }

  get officeAddress() {
    return `http://127.0.0.1:${this.port}`;
  }

  /** @returns {string} */
  get officeFolder() {
    return path.join(this.folder, "office");
  }

  async startOffice() {
    this.office = await start(["office", "--folder", this.officeFolder, "--port", String(this.port)]);
  }

  /** Starts the browser shell, at the port of the last time. @returns {Promise<string>} its address with the token */
  async startField() {
    const args = ["--folder", path.join(this.folder, "field"), "--office", this.officeAddress, "--rehearsal"];
    this.field = await start(["field", ...args, "--token-file", path.join(this.folder, "device-token")]);
    return this.field.addresses[0]?.url ?? "";
  }

  /** The address that signs in to the office's pages once. */
  async newLink() {
    const [line = ""] = await run(["office", "--folder", this.officeFolder, "--new-link"]);
    return this.officeAddress + line;
  }

  async end() {
    await this.field?.kill9();
    await this.office?.kill9();
    rmSync(this.folder, { recursive: true, force: true });
  }
}

/**
 * The folder of a demo that was started once and stopped. Drawing takes long, so the next test file takes the same one:
 * for as long as the program is the same, on the same day.
 *
 * @returns {Promise<string>}
 */
async function drawing() {
  const { mtimeMs, size } = statSync(PROGRAM);
  const day = new Date().toISOString().slice(0, 10);
  const folder = path.join(VILLAGES, `${Math.trunc(mtimeMs)}-${size}-${day}`);
  if (existsSync(folder)) return folder;
  const begun = `${folder}.${process.pid}`;
  mkdirSync(begun, { recursive: true });
  const demo = await start(["demo", "--folder", begun, "--office-port", "0", "--field-port", "0"], {
    addresses: 2,
    waitMs: SET_UP_MS,
  });
  await demo.kill9();
  if (existsSync(folder)) return begun; // another test file was quicker
  renameSync(begun, folder);
  for (const name of readdirSync(VILLAGES)) {
    const old = !name.startsWith(path.basename(folder));
    if (old) rmSync(path.join(VILLAGES, name), { recursive: true, force: true });
  }
  return folder;
}

/** A port that nobody had a moment ago. @returns {Promise<number>} */
function freePort() {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once("error", reject);
    server.listen(0, "127.0.0.1", () => {
      const address = server.address();
      const port = typeof address === "object" && address ? address.port : 0;
      server.close(() => resolve(port));
    });
  });
}
