import { unzipSync } from "fflate";
import { expect, it } from "vitest";
import { csvFiles } from "../../src/workbook/share/csv";
import { shareCopy } from "../../src/workbook/share/share-copy";
import { markedWorkbook, TRAVELS } from "./marked";
import { faultsOf } from "./packages";

// Where a file of ECMA-376 Part 1 (18, 15.2, 22) has room for words, and what Office writes there of users and
// machines. Read with a zip library and nothing of ours.

const { bytes, marks } = markedWorkbook();
const latin = new TextDecoder("latin1");

/** All that a file holds: names of parts, parts unpacked, and the packed bytes themselves. */
function everything(file: Uint8Array): string {
  const parts = Object.entries(unzipSync(file)).map(([name, part]) => `${name} ${latin.decode(part)}`);
  return [latin.decode(file), ...parts].join("\n");
}

const found = (words: string) => [...marks].flatMap(([word, place]) => (words.includes(word) ? [place] : []));

it("plants a marker in every place, and each can be found in the workbook itself", () => {
  expect(marks.size).toBeGreaterThanOrEqual(60);
  expect(found(everything(bytes)).length).toBe(marks.size);
});

it("lets none of them travel with a sheet that is shared", async () => {
  const copy = await shareCopy(bytes, { choice: { kind: "sheets", names: ["Plan"] }, source: "plan.xlsx" });
  const words = everything(copy.bytes);
  expect(found(words)).toEqual([]);
  expect(faultsOf(copy.bytes)).toEqual([]);
  for (const kept of Object.values(TRAVELS)) expect(words).toContain(kept);
  expect(
    found(
      csvFiles(copy.bytes)
        .map(({ text }) => text)
        .join("\n"),
    ),
  ).toEqual([]);
});

it("keeps what cannot be read out of a copy of all sheets too, hidden sheets among it", async () => {
  const copy = await shareCopy(bytes, { choice: { kind: "all" } });
  const ofCosts = found(everything(copy.bytes)).filter(
    (place) => !/sheet left out|table left out/.test(place),
  );
  // With every sheet shared, formulas that read Costs may travel with their constants.
  expect(ofCosts.filter((place) => !/constant|rule/.test(place))).toEqual([]);
});

it("lists all that travels and what stays behind", async () => {
  const { travels, staysBehind } = await shareCopy(bytes, {
    choice: { kind: "sheets", names: ["Plan"] },
    source: "plan.xlsx",
    date: "29 November",
  });
  const list = travels.join("\n");
  for (const words of ["Sheets: Plan (", 'name of the workbook "plan.xlsx"', 'date "29 November"'])
    expect(list).toContain(words);
  expect(found(list)).toEqual([]);
  const behind = staysBehind.join("\n");
  for (const words of ["hidden or cannot be read: 5 on Plan", "notes written by hand", "drop-down lists"])
    expect(behind).toContain(words);
});
