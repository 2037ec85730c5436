// The device's engine, in the browser shell's own process, against servers of tus 1.0 that are none of ours, over a wire that is
// cut at random: tusd (https://github.com/tus/tusd, the reference server) and @tus/server (https://github.com/tus/tus-node-server).

import assert from "node:assert/strict";
import { randomBytes } from "node:crypto";
import { cpSync, mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { after, before, describe, test } from "node:test";

import { start } from "../browser/lib/coilside.mjs";
import { sha256 } from "../browser/lib/record.mjs";
import { Village } from "../browser/lib/village.mjs";
import { CuttingWire, random } from "./cutting.mjs";
import { Device, inMemory, picture } from "./device.mjs";
import { Front, tusServer, tusd } from "./foreign.mjs";

const PHOTOGRAPHS = 200;
const BYTES_MOST = 50_000;
/** A connection is cut after so many bytes at most; none is spared. */
const CUT_AFTER_MOST = 400_000;
const CUTS_LEAST = 20;
const WITHIN_MS = 300_000;

const draw = random(23);
const photographs = Array.from({ length: PHOTOGRAPHS }, () => picture(randomBytes(1 + Math.floor(draw() * BYTES_MOST))));
const digests = photographs.map(sha256);
inMemory();
const folder = mkdtempSync(path.join(tmpdir(), "coilside-foreign-"));
/** @type {Village} */ let village;

before(async () => {
  village = await Village.drawn();
  await village.startOffice();
  const device = new Device(await village.startField());
  const assigned = await device.assigned();
  await village.office?.kill9(); // nothing of the visit gets there yet
  await device.visit(assigned, photographs);
  await village.field?.kill9();
  await village.startOffice();
});

after(async () => {
  await village?.end();
  rmSync(folder, { recursive: true, force: true });
});

describe("200 photographs come whole over a wire that is cut at random", { concurrency: true }, () => {
  for (const [name, serve, seed] of /** @type {const} */ ([["tusd", tusd, 31], ["@tus/server", tusServer, 37]])) {
    test(`to ${name}`, async () => {
      const own = path.join(folder, path.basename(name));
      const uploads = path.join(own, "uploads");
      mkdirSync(uploads, { recursive: true });
      cpSync(path.join(village.folder, "field"), path.join(own, "field"), { recursive: true });
      const server = await serve(uploads);
      const front = new Front(server.address, uploads, village.officeAddress);
      const wire = new CuttingWire(await front.listen(), seed, CUT_AFTER_MOST, 0);
      const office = `http://127.0.0.1:${await wire.listen()}`;
      const token = path.join(village.folder, "device-token");
      const field = await start(["field", "--folder", path.join(own, "field"), "--office", office, "--token-file", token]);
      try {
        await new Device(field.addresses[0]?.url ?? "").safe(WITHIN_MS);
        console.log(`${name}: ${wire.cuts} cuts in ${wire.connections} connections, ${front.resumed} pieces went on; it said`, front.answers);
        for (const digest of digests) {
          assert.equal(sha256(readFileSync(front.file(digest))), digest);
        }
        const kept = readdirSync(uploads).filter((file) => /^[0-9a-f]{64}$/.test(file));
        assert.deepEqual(kept.sort(), digests.toSorted(), "it has each once and nothing else");
        assert.ok(wire.cuts >= CUTS_LEAST, `the wire was cut only ${wire.cuts} times in ${wire.connections} connections`);
        assert.ok(front.resumed >= 5, `only ${front.resumed} pieces went on from what had come`);
      } finally {
        await field.kill9();
        wire.close();
        front.close();
        await server.end();
      }
    });
  }
});
