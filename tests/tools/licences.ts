import { type Licensed, licensed, refusedLicences } from "./licence-list";

/** `node src/cli/start.cjs tests/tools/licences.ts`: every package by licence; exits 1 where one is not accepted. */
const byLicence = new Map<string, Licensed[]>();
for (const one of licensed()) byLicence.set(one.licence, [...(byLicence.get(one.licence) ?? []), one]);

for (const [licence, list] of [...byLicence].sort(([, a], [, b]) => b.length - a.length)) {
  console.log(`${licence}: ${list.length}`);
  console.log(`  ${list.map(({ name, version }) => `${name} ${version}`).join(", ")}`);
}

const refused = refusedLicences();
for (const { name, licence } of refused)
  console.error(`${name}: licence "${licence}" is not among those accepted`);
if (refused.length > 0) process.exitCode = 1;
