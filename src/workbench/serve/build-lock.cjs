const { mkdirSync, rmSync, statSync } = require("node:fs");
const path = require("node:path");

/** A build that was killed leaves its lock behind; none takes longer than this. */
const STALE_MS = 180_000;
const WAIT_MS = 250;

function isStale(lock) {
  try {
    return Date.now() - statSync(lock).mtimeMs > STALE_MS;
  } catch {
    return false;
  }
}

function taken(lock) {
  try {
    mkdirSync(lock);
    return true;
  } catch (fault) {
    if (fault.code !== "EEXIST") throw fault;
    if (isStale(lock)) rmSync(lock, { recursive: true, force: true });
    return false;
  }
}

/** Runs work that only one process at a time may do, such as writing to the same folder. */
async function alone(lock, work) {
  mkdirSync(path.dirname(lock), { recursive: true });
  while (!taken(lock)) await new Promise((resolve) => setTimeout(resolve, WAIT_MS));
  try {
    return await work();
  } finally {
    rmSync(lock, { recursive: true, force: true });
  }
}

module.exports = { alone };
