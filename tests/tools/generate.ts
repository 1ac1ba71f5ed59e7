import { readFileSync, writeFileSync } from "node:fs";
import { fitFileText } from "../fitting/fit";
import { withFunctionTable } from "./function-table";
import { libraryPage } from "./library-page";

/** Files that follow from others: `npm run generate` writes them, `npm run check` compares them. */
const GENERATED: readonly { readonly path: string; readonly content: (now: string) => string }[] = [
  { path: "assets/help/functions.md", content: withFunctionTable },
  { path: "assets/help/library.md", content: libraryPage },
  { path: "src/core/tempering/fits.json", content: fitFileText },
];

const isCheck = process.argv.includes("--check");

for (const { path, content } of GENERATED) {
  const now = readFileSync(path, "utf8");
  const due = content(now);
  if (now === due) continue;
  if (isCheck) {
    console.error(`${path} is out of date: run npm run generate and commit the result`);
    process.exitCode = 1;
  } else {
    writeFileSync(path, due);
    console.log(`${path} written`);
  }
}
