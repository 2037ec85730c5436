// The office's upload side against tus-js-client, the reference client of tus 1.0 (https://github.com/tus/tus-js-client), over
// a wire that is cut at random and an office that is killed.

import assert from "node:assert/strict";
import { createHash, randomBytes } from "node:crypto";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import path from "node:path";
import { after, before, test } from "node:test";

import { run, start } from "../browser/lib/coilside.mjs";
import { CuttingWire, random } from "./cutting.mjs";

const tus = createRequire(new URL("../browser/package.json", import.meta.url))("tus-js-client");

const FILES = 200;
const BYTES_MOST = 300_000;
const AT_ONCE = 6;
/** The office is killed when so many have come. */
const KILLED_AT = [60, 140];

const draw = random(7);
const folder = mkdtempSync(path.join(tmpdir(), "coilside-tus-"));
const files = Array.from({ length: FILES }, () => {
  const bytes = randomBytes(1 + Math.floor(draw() * BYTES_MOST));
  return { bytes, digest: createHash("sha256").update(bytes).digest() };
});
let token = "";
let port = 0;
/** @type {import("../browser/lib/coilside.mjs").Started} */
let office;

const startOffice = () => start(["office", "--folder", folder, "--port", String(port)]);

function freePort() {
  return new Promise((resolve) => {
    const server = createServer().listen(0, "127.0.0.1", () => {
      const { port } = server.address();
      server.close(() => resolve(port));
    });
  });
}

/** @param {{ bytes: Buffer, digest: Buffer }} file @param {number} at @param {(error?: Error) => void} done */
function upload(file, at, done) {
  const checked = at % 2 === 0; // half of them in pieces
  return new tus.Upload(file.bytes, {
    endpoint: `http://127.0.0.1:${wirePort}/api/v1/photos`,
    headers: { Authorization: `Bearer ${token}`, "Repr-Digest": `sha-256=:${file.digest.toString("base64")}:` },
    metadata: { filename: `${at}.jpg`, filetype: "image/jpeg" },
    chunkSize: checked ? 65_536 : Infinity,
    // The office is down for a second or two when it is killed.
    retryDelays: Array.from({ length: 100 }, (_, n) => 10 + 5 * n),
    onError: (error) => done(error),
    onSuccess: () => done(),
  });
}

let wirePort = 0;
/** @type {CuttingWire} */
let wire;

before(async () => {
  [token] = await run(["office", "--folder", folder, "--new-device", "tus-js-client"]);
  port = await freePort();
  office = await startOffice();
  wire = new CuttingWire(port, 11, 250_000);
  wirePort = await wire.listen();
});

after(async () => {
  wire.close();
  await office.kill9();
  rmSync(folder, { recursive: true, force: true });
});

test(`${FILES} files come whole by tus-js-client over a wire that is cut, with the office killed twice`, async () => {
  let come = 0;
  const waiting = files.map((file, at) => ({ file, at }));
  const worker = async () => {
    for (let next = waiting.shift(); next; next = waiting.shift()) {
      const { file, at } = next;
      await new Promise((resolve, reject) => upload(file, at, (error) => (error ? reject(error) : resolve())).start());
      come += 1;
      if (KILLED_AT.includes(come)) {
        await office.kill9();
        office = await startOffice();
      }
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, worker));
  assert.equal(come, FILES);
  assert.ok(wire.cuts >= 50, `the wire was cut only ${wire.cuts} times in ${wire.connections} connections`);
  console.log(`${wire.cuts} cuts in ${wire.connections} connections`);
});

test("each has a receipt that is true, and lies in the office to the byte", async () => {
  for (const { digest } of files) {
    const name = digest.toString("hex");
    const answer = await fetch(`http://127.0.0.1:${port}/api/v1/photos/${name}/receipt`, {
      headers: { Authorization: `Bearer ${token}` },
    });
    const receipt = await answer.json();
    assert.deepEqual(receipt, { digest: name, safe: true, repr_digest: `sha-256=:${digest.toString("base64")}:` });
    const kept = readFileSync(path.join(folder, "photos", name.slice(0, 2), name));
    assert.equal(createHash("sha256").update(kept).digest("hex"), name);
  }
});

test("an upload is taken back by tus-js-client's own abort", async () => {
  const bytes = randomBytes(500_000);
  const digest = createHash("sha256").update(bytes).digest();
  const one = new tus.Upload(bytes, {
    endpoint: `http://127.0.0.1:${port}/api/v1/photos`,
    headers: { Authorization: `Bearer ${token}`, "Repr-Digest": `sha-256=:${digest.toString("base64")}:` },
    chunkSize: 10_000,
    retryDelays: [20, 50, 100, 200, 500], // a piece may still be on its way in: the office says that it is busy
  });
  await new Promise((resolve, reject) => {
    one.options.onError = reject;
    one.options.onChunkComplete = resolve;
    one.start();
  });
  await one.abort(true);
  const answer = await fetch(`http://127.0.0.1:${port}/api/v1/photos/${digest.toString("hex")}`, {
    method: "HEAD",
    headers: { Authorization: `Bearer ${token}`, "Tus-Resumable": "1.0.0" },
  });
  assert.equal(answer.status, 404);
});
