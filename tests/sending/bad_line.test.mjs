// A visit with 12 photographs over a bad line between two network namespaces: from the browser shell's own process at one end to
// the office at the other, with the TCP of the kernel between them.
//
// COILSIDE_BAD_LINE=whole is the line of a bad day: 20 % of the packets lost, 800 ms, 64 kbit/s, at each end. It takes many
// minutes; the suite bench runs it. Without it the way is shorter and all else the same.

import assert from "node:assert/strict";
import { randomBytes } from "node:crypto";
import path from "node:path";
import { after, before, test } from "node:test";

import { PROGRAM } from "../browser/lib/coilside.mjs";
import { chained, deviceEvents, officeEvents, original, sha256 } from "../browser/lib/record.mjs";
import { rows } from "../browser/lib/rows.mjs";
import { Village } from "../browser/lib/village.mjs";
import { BadLine } from "./bad_line.mjs";
import { Device, inMemory, picture } from "./device.mjs";

const WHOLE = process.env.COILSIDE_BAD_LINE === "whole";
const PHOTOGRAPHS = 12;
const BYTES_MOST = 4_000;
const LINE = { lossPercent: 20, delayMs: WHOLE ? 800 : 50, rateBit: 64_000, seed: 41 };
const WITHIN_MS = WHOLE ? 1_800_000 : 300_000;

const photographs = Array.from({ length: PHOTOGRAPHS }, (_, at) => picture(randomBytes(Math.ceil((BYTES_MOST * (at + 1)) / PHOTOGRAPHS))));
/** @type {Village} */ let village;
/** @type {BadLine} */ let line;
/** @type {import("../browser/lib/coilside.mjs").Started} */ let field;

before(async () => {
  inMemory();
  village = await Village.drawn();
  line = new BadLine(LINE);
  // The day begins at the office's own Wi-Fi: what is due is on the device.
  await village.startOffice();
  await new Device(await village.startField()).assigned();
  await village.field?.kill9();
  await village.office?.kill9();
});

after(async () => {
  await field?.kill9();
  console.log((await line?.end())?.join("; "));
  await village?.end();
});

test("a visit with 12 photographs arrives whole over a line that loses 20 % and carries 64 kbit/s", async () => {
  const folder = path.join(village.folder, "field");
  const office = ["office", "--folder", village.officeFolder, "--port", String(village.port)];
  village.office = await BadLine.within(line.far, [PROGRAM, ...office]);
  const address = await line.reach(village.port);
  const token = path.join(village.folder, "device-token");
  field = await BadLine.within(line.near, [PROGRAM, "field", "--folder", folder, "--office", address, "--token-file", token]);
  const url = field.addresses[0]?.url ?? "";
  const device = new Device(url, await line.door(Number(new URL(url).port), path.join(village.folder, "door")));

  // There is no coverage yet: the line is not laid.
  const visit = await device.visit(await device.assigned(), photographs);
  assert.deepEqual(officeEvents(village.officeFolder, visit), []);
  await line.lay();
  console.log(`the line is bad by ${line.by}`);
  const since = Date.now();
  await device.safe(WITHIN_MS);
  console.log(`${PHOTOGRAPHS} photographs, ${photographs.reduce((sum, { length }) => sum + length, 0)} bytes: ${(Date.now() - since) / 1000} s`);

  await field.kill9();
  const there = officeEvents(village.officeFolder, visit);
  const taken = chained(there, visit).filter(({ kind }) => kind === "photo-taken");
  assert.deepEqual(there.map(({ bytes }) => bytes), deviceEvents(folder, visit).map(({ bytes }) => bytes));
  assert.deepEqual(taken.map(({ digest }) => digest), photographs.map(sha256));
  for (const bytes of photographs) assert.equal(original(village.officeFolder, sha256(bytes)), bytes.length);
  const [seal] = rows(path.join(village.officeFolder, "office.db"), `SELECT covers FROM seal WHERE visit = '${visit}'`);
  assert.equal(seal?.covers, there.length);
});
