import { expect, it } from "vitest";
import { registered, sendingOf } from "../../../src/workbook/share/register";
import { REGISTER_HEADINGS } from "../../../src/workbook/sheets/register-sheet";
import { storedValues } from "../template-cells";
import { data, figure, made, row, text } from "./live";

const PAPERS = ["Steel enquiry", "Steel order"];
const copy = { sheets: PAPERS, number: "AAAABBBB", digest: "ff00" };
const sent = { sent: 46351, file: "old quay.xlsx", answerBy: "2026-12-04" };
const OLD_QUAY = "Old Quay Metals";

/** A register with its headings in their row, and what stands below them. */
function plan(...below: string[]): Uint8Array {
  const headings = Object.values(REGISTER_HEADINGS).map((heading, at) =>
    text(`${String.fromCharCode(65 + at)}4`, heading),
  );
  const cover = [
    row(1, text("A1", "Run"), text("B1", "R-07")),
    row(2, text("A2", "Revision"), text("B2", "B")),
  ];
  return made({ sheets: { Cover: data(...cover), Register: data(row(4, ...headings), ...below) } });
}

async function rowsOf(bytes: Uint8Array | undefined) {
  const { rows } = await storedValues(bytes ?? new Uint8Array());
  return rows("Register").slice(4);
}

it("says to whom a copy went, which papers, and what answers are wanted by", () => {
  expect(sendingOf(copy, { word: "supplier", name: OLD_QUAY }, sent)).toEqual({
    sent: 46351,
    to: "Steel supplier: Old Quay Metals",
    papers: "Steel enquiry, Steel order",
    file: "old quay.xlsx",
    copy: "AAAABBBB",
    answerBy: "2026-12-04",
    digest: "ff00",
  });
  const bare = sendingOf(
    { ...copy, number: undefined },
    { word: undefined, name: undefined },
    { sent: "", file: "a" },
  );
  expect([bare.to, bare.copy, bare.answerBy]).toEqual(["", "", ""]);
  expect(sendingOf(copy, { word: "supplier", name: undefined }, sent).to).toBe("Steel supplier");
  expect(sendingOf(copy, { word: undefined, name: "A" }, sent).to).toBe("A");
});

it("takes the first row, then the row under all that stand there, numbered, with the run and its revision", async () => {
  const once = await registered(plan(), sendingOf(copy, { word: "supplier", name: OLD_QUAY }, sent));
  const twice = await registered(once ?? plan(), { to: "Customer", remark: "by hand" });
  expect((await rowsOf(twice)).map((cells) => cells.slice(0, 10))).toEqual([
    [
      1,
      46351,
      "Steel supplier: Old Quay Metals",
      "Steel enquiry, Steel order",
      "R-07 B",
      "old quay.xlsx",
      "AAAABBBB",
      "2026-12-04",
      "ff00",
      undefined,
    ],
    [2, undefined, "Customer", undefined, "R-07 B", undefined, undefined, undefined, undefined, "by hand"],
  ]);
});

it("writes over no row that holds anything under any heading", async () => {
  const remark = plan(row(5, figure("A5", 1)), row(7, text("J7", "sent by fax")));
  const rows = await rowsOf(await registered(remark, { to: "Customer" }));
  expect(rows.map((cells) => [cells[0], cells[2], cells[9]])).toEqual([
    [1, undefined, undefined],
    [undefined, undefined, undefined],
    [undefined, undefined, "sent by fax"],
    [4, "Customer", undefined],
  ]);
});

it("goes without a cover, leaves out headings that are missing, and is no register elsewhere", async () => {
  const headings = row(4, text("A4", REGISTER_HEADINGS.number), text("B4", REGISTER_HEADINGS.to));
  const bare = made({ sheets: { Register: data(headings) } });
  expect(
    (await rowsOf(await registered(bare, { to: "A", file: "a.xlsx", remark: "x" }))).map((cells) => [
      ...cells,
    ]),
  ).toEqual([[1, "A"]]);
  expect(await registered(made({ sheets: { Plan: data() } }), { to: "A" })).toBeUndefined();
});
