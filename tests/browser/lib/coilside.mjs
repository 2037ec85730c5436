// Starts the program `coilside` as a process of its own and waits for the addresses that it prints.

import { execFile, spawn } from "node:child_process";
import { promisify } from "node:util";
import path from "node:path";
import { fileURLToPath } from "node:url";

export const ROOT = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "../../..");

/** Where the suite has built the program. */
export const PROGRAM = process.env.COILSIDE_BIN ?? path.join(ROOT, "target/debug/coilside");

const ADDRESS = /https?:\/\/(?:127\.0\.0\.1|localhost|\[::1\]):\d+\S*/g;
const LINES_KEPT_MAX = 2000;

// Whatever is still running when the tests end, however they end, is killed.
const running = new Set();
process.on("exit", () => {
  for (const child of running) child.kill("SIGKILL");
});

/**
 * @typedef {object} Started
 * @property {{ url: string, line: string }[]} addresses in the order printed, with the line that each stood in
 * @property {string[]} lines everything printed so far, standard output and error together
 * @property {number | undefined} pid
 * @property {() => Promise<number | string | null>} stop SIGTERM; the exit code or signal. Throws if it does not end
 * @property {() => Promise<number | string | null>} kill9 SIGKILL, as when a battery dies
 * @property {Promise<number | string | null>} exited
 */

/**
 * Starts a program and waits until it has printed `addresses` addresses.
 *
 * @param {string[]} args
 * @param {{ addresses?: number, program?: string, env?: Record<string, string>, cwd?: string, waitMs?: number }} [options]
 * @returns {Promise<Started>}
 */
export async function start(args, options = {}) {
  const { addresses: wanted = 1, program = PROGRAM, env = {}, cwd = ROOT, waitMs = 30_000 } = options;
  const name = `${path.basename(program)} ${args.join(" ")}`;
  const child = spawn(program, args, { cwd, env: { ...process.env, ...env }, stdio: ["ignore", "pipe", "pipe"] });
  running.add(child);

  /** @type {string[]} */
  const lines = [];
  /** @type {{ url: string, line: string }[]} */
  const addresses = [];
  const exited = new Promise((resolve) => {
    child.once("error", (error) => resolve(error.message));
    child.once("close", (code, signal) => resolve(signal ?? code));
  });
  exited.then(() => running.delete(child));

  const ready = new Promise((resolve) => {
    for (const stream of [child.stdout, child.stderr]) {
      eachLine(stream, (line) => {
        if (lines.length < LINES_KEPT_MAX) lines.push(line);
        for (const [url] of line.matchAll(ADDRESS)) addresses.push({ url, line });
        if (addresses.length >= wanted) resolve("ready");
      });
    }
  });

  const outcome = await within(waitMs, Promise.race([ready, exited.then((code) => ({ code }))]));
  if (outcome !== "ready") {
    child.kill("SIGKILL");
    const what = outcome === undefined ? `printed too few addresses in ${waitMs} ms` : `ended with ${outcome.code}`;
    throw new Error(`${name} ${what}; wanted ${wanted}, got ${addresses.length}. It printed:\n${lines.join("\n")}`);
  }

  return {
    addresses,
    lines,
    pid: child.pid,
    exited,
    async kill9() {
      child.kill("SIGKILL");
      return exited;
    },
    async stop() {
      child.kill("SIGTERM");
      const code = await within(10_000, exited);
      if (code === undefined) {
        child.kill("SIGKILL");
        throw new Error(`${name} did not end within 10 s of SIGTERM. It printed:\n${lines.join("\n")}`);
      }
      return code;
    },
  };
}

/**
 * Runs the program to its end.
 *
 * @param {string[]} args
 * @returns {Promise<string[]>} the lines of its standard output; throws if it fails
 */
export async function run(args) {
  const { stdout } = await promisify(execFile)(PROGRAM, args, { cwd: ROOT });
  return stdout.trim().split("\n");
}

/** Calls back for each whole line of a stream, and for a rest without an end of line. */
function eachLine(stream, take) {
  let rest = "";
  stream.setEncoding("utf8");
  stream.on("data", (text) => {
    const parts = (rest + text).split("\n");
    rest = parts.pop() ?? "";
    for (const line of parts) take(line);
  });
  stream.on("end", () => rest && take(rest));
}

/** The promise's value, or undefined if it takes longer. */
async function within(ms, promise) {
  let timer;
  const late = new Promise((resolve) => (timer = setTimeout(resolve, ms)));
  try {
    return await Promise.race([promise, late]);
  } finally {
    clearTimeout(timer);
  }
}
