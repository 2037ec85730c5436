// The tools of the browser tests, tried on pages and programs whose faults are known.

import assert from "node:assert/strict";
import { mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:http";
import { tmpdir } from "node:os";
import path from "node:path";
import { after, before, test } from "node:test";

import { violations } from "./lib/axe.mjs";
import { launch, troubles } from "./lib/chromium.mjs";
import { start } from "./lib/coilside.mjs";
import { Disk } from "./lib/outbox.mjs";
import { makePhotos } from "./lib/photos.mjs";
import { sha256 } from "./lib/record.mjs";
import { Village } from "./lib/village.mjs";

const GOOD = '<!doctype html><html lang="en"><title>A page</title><main><h1>A page</h1><p>Some words.</p></main></html>';
const PAGES = {
  "/good": GOOD,
  "/bad": GOOD.replace("<p>", '<p style="color:#999">').replace("</main>", '<img src="data:,"><input></main>'),
  "/throws": GOOD.replace("</main>", '</main><script>throw new Error("planted")</script>'),
  "/elsewhere": GOOD.replace("</main>", '<img alt="" src="http://elsewhere.invalid/picture.png"></main>'),
};

let browser;
let server;
let origin;

before(async () => {
  server = createServer((request, response) => {
    const page = PAGES[request.url ?? ""];
    const headers = { "content-type": "text/html; charset=utf-8" };
    // As strict as the office's own pages; only the planted script needs more.
    if (request.url === "/good") headers["content-security-policy"] = "default-src 'none'";
    response.writeHead(page ? 200 : 404, headers).end(page);
  });
  await new Promise((resolve) => server.listen(0, "127.0.0.1", () => resolve(undefined)));
  origin = `http://127.0.0.1:${server.address().port}`;
  browser = await launch();
});

after(async () => {
  await browser?.close();
  server?.close();
});

async function open(where) {
  const page = await browser.newPage();
  const found = troubles(page);
  await page.goto(origin + where);
  return { page, found };
}

test("a good page under a strict content policy passes axe-core", async () => {
  const { page } = await open("/good");
  assert.equal(await violations(page), "");
});

test("axe-core names each planted violation with its place", async () => {
  const { page } = await open("/bad");
  const text = await violations(page);
  // #999 on white is 2.85:1, where WCAG 2.2 success criterion 1.4.3 asks 4.5:1.
  assert.match(text, /color-contrast[^]*\n {2}p\n/);
  assert.match(text, /image-alt[^]*\n {2}img\n/);
  assert.match(text, /label[^]*\n {2}input\n/);
});

test("a thrown error and a request to elsewhere are written down", async () => {
  const thrown = (await open("/throws")).found;
  assert.ok(thrown.some((one) => one.includes("planted")), thrown.join("\n"));
  const elsewhere = (await open("/elsewhere")).found;
  assert.ok(elsewhere.some((one) => one.includes("elsewhere.invalid")), elsewhere.join("\n"));
});

test("a started program gives its addresses and ends when told", async () => {
  const script = 'echo "Office: http://127.0.0.1:4001/a"; echo "Shell: http://127.0.0.1:4002/b?c=d"; exec sleep 60';
  const started = await start(["-c", script], { program: "/bin/sh", addresses: 2 });
  assert.deepEqual(
    started.addresses.map(({ url }) => url),
    ["http://127.0.0.1:4001/a", "http://127.0.0.1:4002/b?c=d"],
  );
  assert.match(started.addresses[1].line, /^Shell/);
  assert.equal(await started.stop(), "SIGTERM");
});

test("a program that ends before its address is an error that shows what it printed", async () => {
  await assert.rejects(start(["-c", "echo no database; exit 3"], { program: "/bin/sh" }), /ended with 3[^]*no database/);
  await assert.rejects(start(["-c", "exec sleep 60"], { program: "/bin/sh", waitMs: 200 }), /too few addresses/);
});

test("the photographs are on disk with the digests that were printed", (t) => {
  const folder = mkdtempSync(path.join(tmpdir(), "coilside-photos-"));
  t.after(() => rmSync(folder, { recursive: true }));
  const made = makePhotos(folder, ["--count", "2", "--latitude=10.5", "--longitude=-20.25"]);
  assert.equal(made.length, 2);
  for (const one of made) {
    assert.equal(sha256(readFileSync(one.file)), one.sha256);
  }
  assert.equal(made[0].exif.longitude, -20.25);
});

test("a photograph that becomes whole after the disk was looked at counts with all its bytes", (t) => {
  const folder = mkdtempSync(path.join(tmpdir(), "coilside-disk-"));
  t.after(() => rmSync(folder, { recursive: true }));
  const bytes = 60_000;
  const whole = Buffer.alloc(bytes, 7);
  const digest = sha256(whole);
  const [part, shelf] = [path.join(folder, "parts", `${digest}.part`), path.join(folder, "photos", digest.slice(0, 2))];
  for (const made of [path.dirname(part), shelf]) mkdirSync(made, { recursive: true });
  const disk = new Disk(folder, [{ sha256: digest, bytes }]);

  writeFileSync(part, whole.subarray(0, 100));
  assert.equal(disk.isWhole(digest), false);
  assert.equal(disk.arrived(bytes), 100);
  writeFileSync(part, whole);
  renameSync(part, path.join(shelf, digest));
  assert.equal(disk.arrived(bytes), bytes);
});

test("each village has an address of its own, and keeps it while another one comes", async (t) => {
  const [one, other] = [await Village.drawn(), await Village.drawn()];
  t.after(() => Promise.all([one.end(), other.end()]));
  const address = await one.startField();
  await one.field?.kill9();
  assert.notEqual(await other.startField(), address);
  assert.equal(await one.startField(), address);
});
