import { expect, it } from "vitest";
import type { ShareCopy } from "../../../src/workbook/share/share-copy";
import { shareList, shareReport } from "../../../src/workbook/share/share-report";
import type { Cause } from "../../../src/workbook/share/verify/causes";
import { remarkGroups } from "../../../src/workbook/share/verify/told";
import type { Verification } from "../../../src/workbook/share/verify/verify-copy";

const copy = (more: Partial<ShareCopy>): ShareCopy => ({
  bytes: new Uint8Array(),
  digest: "ab12",
  sheets: ["Order"],
  number: undefined,
  formulas: 2,
  left: [],
  errors: [],
  hidden: [],
  leftOut: 0,
  travels: ["Sheets: Order"],
  staysBehind: [],
  ...more,
});
const error = (at: number) => ({ sheet: "Order", cell: `B${at + 1}`, text: "#N/A" });

it("says what was made, what travels, what stays behind, and errors up to eight", () => {
  expect(shareReport("Copied", copy({ formulas: 1 }))).toEqual({
    sentence: "Copied. 1 formula replaced by values; SHA-256 ab12.",
    remarks: ["Sheets: Order"],
  });
  const full = copy({ staysBehind: ["links", "tables"], errors: [error(0)] });
  expect(shareList(full)).toEqual(["Sheets: Order", "Stays behind: links; tables"]);
  expect(shareReport("Copied", full)).toEqual({
    sentence: "Copied. 2 formulas replaced by values; SHA-256 ab12.",
    remarks: ["Sheets: Order", "Stays behind: links; tables", "Order!B1 holds #N/A"],
  });
  const errors = (count: number) =>
    shareReport(
      "Copied",
      copy({ errors: Array.from({ length: count }, (_, at) => error(at)) }),
    ).remarks.slice(1);
  expect(errors(8).at(-1)).toBe("Order!B8 holds #N/A");
  expect(errors(8)).toHaveLength(8);
  expect(errors(10)).toEqual([...errors(8), "and 2 more errors"]);
});

it("tells what verify found under a title each: formulas, values by their cause, looks, Provenance", () => {
  const differs = (cause: Cause, cell: string) => ({
    sheet: "Order",
    cell,
    cause,
    live: { value: 58 },
    shared: cause === "typed" ? undefined : ({ value: "soft" } as const),
  });
  const remark = { sheet: "Order", cell: "A1", text: "x" };
  const found = {
    differences: [
      differs("unexplained", "A9"),
      differs("follows", "A8"),
      differs("typed", "A7"),
      differs("version", "A6"),
      differs("stored", "A5"),
      differs("clock", "A4"),
      differs("formula", "A3"),
      differs("typed", "A2"),
    ],
    formulas: [remark],
    shown: [remark],
    provenance: [remark],
  };
  const told = remarkGroups(found as unknown as Verification);
  expect(told.map(({ title, remarks }) => `${title} ${remarks.map(({ cell }) => cell).join(" ")}`)).toEqual([
    "Formulas in the copy, which should hold values only: A1",
    "Typed otherwise in the two files: A7 A2",
    "The formula is another one than the copy's note keeps: A3",
    "The formula asks for the time or a random number: A4",
    "Not calculated here; the live file holds another value than the copy: A5",
    "The copy was calculated by another version or data edition, which may be why: A6",
    "Follow from the cells above: A8",
    "No reason found; the copy may have been altered: A9",
    "Differs from a copy made now: A1",
    "Differs on Provenance from a copy made now: A1",
  ]);
  expect(told[1]?.remarks[0]).toEqual({ sheet: "Order", cell: "A7", text: "live 58, copy empty" });
  expect(told[7]?.remarks[0]).toEqual({ sheet: "Order", cell: "A9", text: "live 58, copy soft" });
  const nothing = { differences: [], formulas: [], shown: [], provenance: [] };
  expect(remarkGroups(nothing as unknown as Verification)).toEqual([]);
});
