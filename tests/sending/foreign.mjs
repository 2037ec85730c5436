// An office whose photographs go to a server of tus that is none of ours. What is tus goes to it as it came and its answers
// come back as they are; added is only what tus does not have:
// - the receipt: the digest of the file that the server has on its disk;
// - that an upload may be announced again and stays what it is (tus would begin another one);
// - all that is no photograph, or only shows a small picture ahead of one, goes to an office of ours.

import { existsSync, readFileSync } from "node:fs";
import http from "node:http";
import { createRequire } from "node:module";
import path from "node:path";

import { start } from "../browser/lib/coilside.mjs";
import { sha256 } from "../browser/lib/record.mjs";

const require = createRequire(new URL("../browser/package.json", import.meta.url));
const PHOTOS = "/api/v1/photos";

/** The metadata of an announcement. @param {http.IncomingMessage} request */
function digestOf(request) {
  const pairs = String(request.headers["upload-metadata"] ?? "").split(",").map((pair) => pair.trim().split(" "));
  const told = pairs.find(([name]) => name === "sha256")?.[1];
  return told ? Buffer.from(told, "base64").toString() : "";
}

/** tusd, built by the suite. @param {string} folder */
export async function tusd(folder) {
  const program = process.env.COILSIDE_TUSD;
  if (!program) throw new Error("COILSIDE_TUSD names tusd; tests/run sets it");
  const started = await start([folder], { program });
  return { address: started.addresses[0]?.url ?? "", end: () => started.kill9() };
}

/** @tus/server, the reference server for Node (https://github.com/tus/tus-node-server). @param {string} folder */
export async function tusServer(folder) {
  const { Server } = require("@tus/server");
  const { FileStore } = require("@tus/file-store");
  // Uploads are named as the client names them: our devices know the address of a photograph before they ask.
  const namingFunction = (/** @type {any} */ _, /** @type {Record<string, string>} */ metadata) => metadata.sha256;
  const tus = new Server({ path: PHOTOS, datastore: new FileStore({ directory: folder }), namingFunction });
  const server = http.createServer((request, answer) => tus.handle(request, answer));
  const port = await listening(server);
  return { address: `http://127.0.0.1:${port}`, end: async () => void (server.close(), server.closeAllConnections()) };
}

/** @param {http.Server} server @returns {Promise<number>} its port */
function listening(server) {
  return new Promise((resolve) => {
    server.listen(0, "127.0.0.1", () => {
      const address = server.address();
      resolve(typeof address === "object" && address ? address.port : 0);
    });
  });
}

export class Front {
  /** @param {string} tus address of the foreign server @param {string} folder where it keeps files @param {string} office ours */
  constructor(tus, folder, office) {
    this.tus = tus;
    this.folder = folder;
    this.office = office;
    /** @type {Set<string>} */
    this.announced = new Set();
    /** What the foreign server answered, by method and status. @type {Map<string, number>} */
    this.answers = new Map();
    /** Pieces that it took and that went on from what had come before. */
    this.resumed = 0;
    this.server = http.createServer((request, answer) => this.take(request, answer));
  }

  listen() {
    return listening(this.server);
  }

  close() {
    this.server.close();
    this.server.closeAllConnections();
  }

  /** The file that the foreign server has of a digest. @param {string} digest */
  file(digest) {
    return path.join(this.folder, digest);
  }

  /** @param {http.IncomingMessage} request @param {http.ServerResponse} answer */
  take(request, answer) {
    const url = request.url ?? "";
    const receipt = /^\/api\/v1\/photos\/([0-9a-f]{64})\/receipt$/.exec(url)?.[1];
    if (receipt) return this.receipt(receipt, answer);
    if (!url.startsWith(PHOTOS) || url.endsWith("/preview")) return this.pass(this.office, request, answer, () => undefined);
    const digest = digestOf(request);
    if (request.method === "POST" && this.announced.has(digest)) {
      answer.writeHead(201, { Location: `${PHOTOS}/${digest}`, "Tus-Resumable": "1.0.0", "Content-Length": 0 }).end();
      return;
    }
    this.pass(this.tus, request, answer, (status) => {
      const said = `${request.method} ${status}`;
      this.answers.set(said, (this.answers.get(said) ?? 0) + 1);
      if (said === "POST 201") this.announced.add(digest);
      if (said === "PATCH 204" && request.headers["upload-offset"] !== "0") this.resumed += 1;
    });
  }

  /** @param {string} digest @param {http.ServerResponse} answer */
  receipt(digest, answer) {
    const file = this.file(digest);
    const has = existsSync(file) ? sha256(readFileSync(file)) : "";
    const body = JSON.stringify({ digest, safe: has === digest });
    answer.writeHead(200, { "Content-Type": "application/json", "Content-Length": Buffer.byteLength(body) }).end(body);
  }

  /**
   * To another server and back; what breaks on one side breaks on the other.
   * @param {string} to @param {http.IncomingMessage} request @param {http.ServerResponse} answer @param {(status: number) => void} said
   */
  pass(to, request, answer, said) {
    const { method, headers } = request;
    const onward = http.request(to + request.url, { method, headers }, (back) => {
      said(back.statusCode ?? 0);
      answer.writeHead(back.statusCode ?? 502, back.headers);
      back.pipe(answer);
      back.on("error", () => answer.destroy());
    });
    onward.on("error", () => answer.destroy());
    answer.on("close", () => onward.destroy());
    request.on("error", () => onward.destroy());
    request.pipe(onward);
  }
}
