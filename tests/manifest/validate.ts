import { readFileSync } from "node:fs";
import { manifestFaults } from "./manifest-rules";

/** `npm run validate`: holds a manifest against the documented rules without asking any server. */
const file = process.argv[2] ?? "manifest/manifest.xml";
const faults = manifestFaults(readFileSync(file, "utf8"));
console.log(faults.length === 0 ? `${file}: no fault found` : faults.join("\n"));
if (faults.length > 0) process.exitCode = 1;
