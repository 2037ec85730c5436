// A record file of the demo's office, verified in JavaScript by libraries that are not ours: jose (JWS), canonicalize
// (RFC 8785), Node's own SHA-256.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import path from "node:path";
import { after, before, test } from "node:test";

import canonicalize from "canonicalize";
import { compactVerify, importJWK } from "jose";

import { run } from "./lib/coilside.mjs";
import { sha256 } from "./lib/record.mjs";
import { Village } from "./lib/village.mjs";

/** @type {Village} */ let village;
/** @type {string} */ let visit;
/** @type {string} */ let cookie;
/** @type {string} */ let file;

before(async () => {
  village = await Village.drawn();
  await village.startOffice();
  const entered = await fetch(await village.newLink(), { redirect: "manual" });
  cookie = (entered.headers.get("set-cookie") ?? "").split(";")[0] ?? "";
  const list = await (await fetch(`${village.officeAddress}/visits`, { headers: { cookie } })).text();
  visit = /\/visits\/([0-9a-f-]{36})/.exec(list)?.[1] ?? "";
  assert.notEqual(visit, "", "the demo's office has a visit of the past");
  file = path.join(village.folder, "record.zip");
  await run(["export", "--folder", village.officeFolder, visit, file]);
});

after(async () => {
  await village?.end();
});

/** The files of a ZIP in which nothing is compressed. @param {Buffer} zip @returns {Map<string, Buffer>} */
function filesOf(zip) {
  const files = new Map();
  for (let at = 0; zip.readUInt32LE(at) === 0x04034b50; ) {
    const [length, name] = [zip.readUInt32LE(at + 18), zip.readUInt16LE(at + 26)];
    assert.equal(zip.readUInt16LE(at + 8), 0, "it is compressed");
    const data = at + 30 + name;
    files.set(zip.subarray(at + 30, data).toString("ascii"), zip.subarray(data, data + length));
    at = data + length;
  }
  return files;
}

/** What a statement says, once it holds under that key and stands in canonical form. @param {string} jws @param {Buffer | undefined} jwk */
async function said(jws, jwk) {
  assert.ok(jwk);
  const key = await importJWK(JSON.parse(jwk.toString()), "ES256");
  const { payload } = await compactVerify(jws, key, { algorithms: ["ES256"] });
  const text = Buffer.from(payload).toString();
  const content = JSON.parse(text);
  assert.equal(canonicalize(content), text);
  const [head = "", , signature = ""] = jws.split(".");
  const other = Buffer.from(JSON.stringify({ ...content, next: 1 })).toString("base64url");
  await assert.rejects(compactVerify(`${head}.${other}.${signature}`, key, { algorithms: ["ES256"] }));
  return content;
}

test("the page hands out the same bytes as the program", async () => {
  const answer = await fetch(`${village.officeAddress}/visits/${visit}/record.zip`, { headers: { cookie } });
  assert.equal(answer.status, 200);
  assert.ok(Buffer.from(await answer.arrayBuffer()).equals(readFileSync(file)));
});

test("seal, receipts and the office's word hold by jose, and all JSON is canonical", async () => {
  const files = filesOf(readFileSync(file));
  const text = files.get("record.json")?.toString() ?? "";
  const record = JSON.parse(text);
  assert.equal(canonicalize(record), text);
  let last = "0".repeat(64);
  for (const [number, event] of record.events.entries()) {
    const read = JSON.parse(event);
    assert.equal(canonicalize(read), event);
    assert.deepEqual([read.seq, read.prev, read.visit], [number, last, visit]);
    last = sha256(Buffer.from(event));
  }
  const seal = await said(record.seals[0], files.get("keys/device.jwk"));
  assert.deepEqual([seal.last, seal.next, seal.visit], [last, record.events.length, visit]);
  const office = files.get("keys/office-1.jwk");
  assert.equal((await said(record.offices[0].certificate, office)).device_key, seal.device_key);
  assert.equal((await said(record.offices[0].receipts[0], office)).last, last);
  const enclosed = await said(files.get("office.jws")?.toString() ?? "", office);
  assert.equal(enclosed.sums, sha256(files.get("SHA256SUMS") ?? Buffer.alloc(0)));
  for (const line of (files.get("SHA256SUMS")?.toString() ?? "").trim().split("\n")) {
    const [digest = "", name = ""] = line.split("  ");
    assert.equal(sha256(files.get(name) ?? Buffer.alloc(0)), digest, name);
  }
  const photographs = [...files.keys()].filter((name) => name.startsWith("photographs/"));
  assert.ok(photographs.length > 0, "a visit of the demo has photographs");
});

test("coilside verify says that it holds under the office's key, and a second office takes it over", async () => {
  const [key = ""] = await run(["office", "--folder", village.officeFolder, "--key"]);
  const told = await run(["verify", file, "--office-key", key]);
  assert.match(told.join("\n"), /Vouched for by the office/);
  assert.match(told.join("\n"), /IT HOLDS\./);
  const second = path.join(village.folder, "second");
  const first = await run(["import", "--folder", second, file, "--office-key", key]);
  assert.match(first.join("\n"), /^Taken over: /);
  const again = await run(["import", "--folder", second, file, "--office-key", key]);
  assert.match(again.join("\n"), /^Was here already/);
});
