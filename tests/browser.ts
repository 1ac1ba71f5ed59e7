import { existsSync } from "node:fs";
import { type Browser, chromium } from "playwright-core";

const SYSTEM_CHROMIUM = "/usr/bin/chromium";

/** Flags that keep a browser on a closed network from looking for its maker's hosts. */
const QUIET = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/**
 * A Chromium to run: `CHROMIUM`, else the one that comes with npm, else the system's.
 *
 * The npm one unpacks the libraries it needs only where it believes to run on a bare host, which
 * two environment variables tell it; an earlier unpacked browser makes it skip that step.
 */
async function executable(): Promise<string> {
  const { CHROMIUM } = process.env;
  if (CHROMIUM !== undefined && CHROMIUM !== "") return CHROMIUM;
  try {
    process.env.AWS_EXECUTION_ENV ??= "AWS_Lambda_nodejs20.x";
    process.env.AWS_LAMBDA_JS_RUNTIME ??= "nodejs20.x";
    const { default: bundled } = await import("@sparticuz/chromium");
    return await bundled.executablePath();
  } catch (problem) {
    if (existsSync(SYSTEM_CHROMIUM)) return SYSTEM_CHROMIUM;
    throw problem;
  }
}

/** A headless Chromium with its network kept to the pages under test. Close it when done. */
export async function launch(): Promise<Browser> {
  return chromium.launch({ executablePath: await executable(), args: QUIET, headless: true });
}
