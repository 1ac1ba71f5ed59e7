import { readFileSync } from "node:fs";
import { manifestFaults } from "./manifest-rules";
import { unifiedFaults } from "./unified";

/**
 * `npm run validate`: holds a manifest against the documented rules, and the unified manifest made from it against the
 * published schema, without asking any server.
 */
const file = process.argv[2] ?? "manifest/manifest.xml";
const xml = readFileSync(file, "utf8");
const unified = unifiedFaults(xml).map((fault) => `unified manifest: ${fault}`);
const faults = [...manifestFaults(xml), ...unified];
console.log(faults.length === 0 ? `${file}: no fault found` : faults.join("\n"));
console.log(`Held against the rules of the vendor's documentation that no schema states or that need code: order of elements,
one runtime, commands, sets, resources, lengths, names, addresses. Not held against the XSD: no npm package carries it.
The unified manifest is held against the JSON schema v1.29 of @microsoft/app-manifest.`);
if (faults.length > 0) process.exitCode = 1;
