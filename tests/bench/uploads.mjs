// Uploads files by tus-js-client, so many at once, and prints the seconds that it took.
//
//     node uploads.mjs ENDPOINT AT_ONCE FOLDER [TOKEN]

import { createHash } from "node:crypto";
import { readFileSync, readdirSync } from "node:fs";
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

const waiting = [...files];
const worker = async () => {
  for (let next = waiting.shift(); next; next = waiting.shift()) await send(next);
};
const begun = performance.now();
await Promise.all(Array.from({ length: Number(atOnce) }, worker));
console.log(JSON.stringify({ files: files.length, seconds: (performance.now() - begun) / 1000 }));
