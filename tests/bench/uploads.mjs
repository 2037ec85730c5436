// Uploads files by tus-js-client, so many at once, and prints the seconds that it took. With a token, which only the office asks
// for, the clock runs on until all files are on its disk: it answers a last byte before that, takes them in their order, and a
// receipt waits. So the receipts of those that came last stop the clock, and then every file must have its own.
//
//     node uploads.mjs ENDPOINT AT_ONCE FOLDER [TOKEN]

import { createHash } from "node:crypto";
import { readFileSync, readdirSync } from "node:fs";
import { Agent, get } from "node:http";
import { createRequire } from "node:module";
import path from "node:path";

const tus = createRequire(new URL("../browser/package.json", import.meta.url))("tus-js-client");

const [endpoint, atOnce, folder, token] = process.argv.slice(2);
// Read and hashed before the clock starts: both servers are sent the same, and only one of them looks at the digest.
const files = readdirSync(folder).map((name) => {
  const bytes = readFileSync(path.join(folder, name));
  return { name, bytes, digest: createHash("sha256").update(bytes).digest("base64") };
});

const send = ({ name, bytes, digest }) =>
  new Promise((resolve, reject) => {
    const headers = { "Repr-Digest": `sha-256=:${digest}:`, ...(token ? { Authorization: `Bearer ${token}` } : {}) };
    const options = { endpoint, headers, metadata: { filename: name }, retryDelays: null, onError: reject, onSuccess: resolve };
    new tus.Upload(bytes, options).start();
  });

const agent = new Agent({ keepAlive: true, maxSockets: Number(atOnce) });
const receipt = ({ digest }) =>
  new Promise((resolve, reject) => {
    const url = `${endpoint}/${Buffer.from(digest, "base64").toString("hex")}/receipt`;
    const answered = (answer) => {
      let text = "";
      answer.setEncoding("utf8").on("data", (part) => (text += part));
      answer.on("end", () => (JSON.parse(text).safe ? resolve() : reject(new Error(`no receipt: ${text}`))));
    };
    get(url, { agent, headers: { Authorization: `Bearer ${token}` } }, answered).on("error", reject);
  });

const all = async (work) => {
  const [waiting, done] = [[...files], []];
  const worker = async () => {
    for (let next = waiting.shift(); next; next = waiting.shift()) {
      await work(next);
      done.push(next);
    }
  };
  await Promise.all(Array.from({ length: Number(atOnce) }, worker));
  return done;
};
const begun = performance.now();
const sent = await all(send);
if (token) await Promise.all(sent.slice(-atOnce).map(receipt));
const seconds = (performance.now() - begun) / 1000;
if (token) await all(receipt);
agent.destroy();
console.log(JSON.stringify({ files: files.length, seconds }));
