import { beforeAll, describe, expect, it } from "vitest";
import { readLiveWorkbook } from "../../../src/workbook/file/read/live-workbook";
import { shareCopy } from "../../../src/workbook/share/share-copy";
import { newKeyPair, signerFrom } from "../../../src/workbook/share/signature";
import { type Values, valuesOf } from "../../../src/workbook/share/values";
import { alignedAnswers, answersIn, tablesIn } from "../../../src/workbook/share/verify/aligned";
import { ownersIn } from "../../../src/workbook/share/verify/owners";
import { isSeal, statementsOf } from "../../../src/workbook/share/verify/statements";
import { type VerifyOptions, verifyCopy } from "../../../src/workbook/share/verify/verify-copy";
import { provenancePart, resealed, withPart } from "../packages";
import { data, figure, formula, made, row, text } from "./live";

// What a verification concludes; sums are plain arithmetic, the parts of a file those of ECMA-376 Part 1, 18.

const SHEET = "xl/worksheets/sheet1.xml";
const PLAN = data(
  row(1, text("A1", "HRC"), figure("B1", 58), formula("C1", "B1+2")),
  row(2, text("A2", "pieces"), figure("B2", 24), formula("C2", "B2*2"), formula("D2", "C2+1")),
);
const live = made({ sheets: { Plan: PLAN, Costs: data(row(1, figure("A1", 9))) } });
const CELLS = [
  ["Plan", "A1", "string", "HRC"],
  ["Plan", "B1", "number", "58"],
  ["Plan", "C1", "number", "60"],
  ["Plan", "A2", "string", "pieces"],
  ["Plan", "B2", "number", "24"],
  ["Plan", "C2", "number", "48"],
  ["Plan", "D2", "number", "49"],
];
const cellsWith = (cell: string, content: string) =>
  CELLS.map((line) => (line[1] === cell ? [...line.slice(0, 3), content] : line));

let copy: Uint8Array;
beforeAll(async () => {
  copy = (
    await shareCopy(live, {
      choice: { kind: "sheets", names: ["Plan"] },
      date: "29 November",
      source: "plan.xlsx",
    })
  ).bytes;
});

async function verdict(ofLive: Uint8Array, ofCopy: Uint8Array, options: VerifyOptions = {}) {
  const found = await verifyCopy(ofLive, ofCopy, options);
  const { isSound, isAltered, isPlanChanged, digest, signatureFound, answers, isSavedElsewhere } = found;
  return {
    isSound,
    isAltered,
    isPlanChanged,
    digest,
    signatureFound,
    answers,
    isSavedElsewhere,
    differences: found.differences.map(({ cell, cause }) => `${cell} ${cause}`),
    shown: found.shown.map(({ sheet, cell }) => `${sheet} ${cell}`),
    provenance: found.provenance.map(({ cell, text: words }) => `${cell} ${words}`),
    formulas: found.formulas.map(({ cell }) => cell),
    sheets: [found.sheetsOfLive, found.sheetsOfCopy],
  };
}

const SOUND = {
  isSound: true,
  isAltered: false,
  isPlanChanged: false,
  digest: "as stated",
  signatureFound: "none",
  answers: 0,
  isSavedElsewhere: false,
  differences: [],
  shown: [],
  provenance: [],
  formulas: [],
  sheets: [["Costs"], []],
} as const;

describe("a copy", () => {
  it("is sound as it was made, and its filled cells are counted", async () => {
    expect(await verdict(live, copy)).toEqual(SOUND);
    const told: string[] = [];
    const found = await verifyCopy(live, copy, { onProgress: (words) => told.push(words) });
    expect(told).toEqual(["reading", "calculating"]);
    expect(found).toMatchObject({
      cells: 7,
      date: "29 November",
      source: "plan.xlsx",
      audience: "sheets chosen by name",
      enquiry: undefined,
      by: undefined,
      number: undefined,
      leftOut: 1,
      key: "none: the copy is not signed",
      signature: undefined,
    });
  });

  it("is altered where a figure differs that the SHA-256 no longer covers", async () => {
    const changed = withPart(copy, SHEET, (xml) => xml.replace("<v>48</v>", "<v>50</v>"));
    expect(await verdict(live, changed)).toEqual({
      ...SOUND,
      isSound: false,
      isAltered: true,
      digest: "not as stated",
      differences: ["C2 unexplained"],
    });
    const told: string[] = [];
    await verifyCopy(live, changed, { onProgress: (words) => told.push(words) });
    expect(told).toEqual(["reading", "calculating", "finding out why 1 cells differ"]);
  });

  it("is as it was made where the plan says another thing since", async () => {
    const later = made({ sheets: { Plan: PLAN.replace("<v>24</v>", "<v>25</v>"), Costs: data() } });
    expect(await verdict(later, copy)).toEqual({
      ...SOUND,
      isSound: false,
      isPlanChanged: true,
      differences: ["B2 typed", "C2 follows", "D2 follows"],
    });
    const fewer = made({ sheets: { Plan: PLAN } });
    expect(await verdict(fewer, copy)).toMatchObject({
      isSound: false,
      isAltered: false,
      isPlanChanged: true,
      sheets: [[], []],
    });
  });

  it("is altered where it shows the same values otherwise, cell by cell", async () => {
    const hidden = withPart(copy, SHEET, (xml) => xml.replace('<row r="2"', '<row r="2" hidden="1"'));
    expect(await verdict(live, hidden)).toEqual({
      ...SOUND,
      isSound: false,
      isAltered: true,
      shown: ["Plan row 2"],
    });
    const moved = withPart(copy, SHEET, (xml) => xml.replace("<v>48</v>", ""));
    // What differs in its value is told once.
    expect(await verdict(live, moved)).toMatchObject({ shown: [], differences: ["C2 unexplained"] });
  });

  it("is altered where it holds a formula, but not where a program saved an error as one", async () => {
    const typed = withPart(copy, SHEET, (xml) => xml.replace("<v>48</v>", "<f>24*2</f><v>48</v>"));
    expect(await verdict(live, typed)).toEqual({
      ...SOUND,
      isSound: false,
      isAltered: true,
      formulas: ["C2"],
    });
    const broken = made({ sheets: { Plan: data(row(1, formula("A1", "NA()"))) } });
    const shared = (await shareCopy(broken)).bytes;
    const saved = withPart(shared, SHEET, (xml) => xml.replace("<v>#N/A</v>", "<f>#N/A</f><v>#N/A</v>"));
    expect(await verdict(broken, saved)).toMatchObject({ isSound: true, formulas: [] });
  });

  it("is altered where it has a sheet that the plan has not", async () => {
    const renamed = withPart(copy, "xl/workbook.xml", (xml) => xml.replace('name="Plan"', 'name="Plans"'));
    expect(await verdict(live, renamed)).toMatchObject({
      isSound: false,
      isAltered: true,
      sheets: [["Plan", "Costs"], ["Plans"]],
    });
  });

  it("is unsound, not altered, where Provenance says another thing with a SHA-256 that fits", async () => {
    const said = withPart(copy, provenancePart(copy), (xml) => xml.replace("Follow local", "Forget local"));
    expect(await verdict(live, resealed(said, CELLS))).toEqual({
      ...SOUND,
      isSound: false,
      provenance: [
        "A4 as made: Follow local codes and licensed practice.; in the copy: Forget local codes and licensed practice.",
      ],
    });
    const emptied = withPart(copy, provenancePart(copy), (xml) => xml.replace(/<c r="A3"[^>]*>.*?<\/c>/, ""));
    expect((await verdict(live, resealed(emptied, CELLS))).provenance).toEqual([
      expect.stringMatching(/^A3 as made: Estimates carry .*; in the copy: nothing$/),
    ]);
    // With a plan that was changed since, the lines of Provenance follow.
    const later = made({ sheets: { Plan: PLAN.replace("<v>24</v>", "<v>25</v>"), Costs: data() } });
    expect((await verdict(later, resealed(said, CELLS))).provenance).toEqual([]);
  });

  it("may state another version, but no other line otherwise", async () => {
    const older = withPart(copy, provenancePart(copy), (xml) =>
      xml.replace("data edition ", "data edition 19"),
    );
    expect(await verdict(live, resealed(older, CELLS))).toEqual(SOUND);
    const more = withPart(older, provenancePart(copy), (xml) => xml.replace("Follow local", "Forget local"));
    expect((await verdict(live, resealed(more, CELLS))).provenance).toHaveLength(1);
  });

  it("is known as saved by another program", async () => {
    const saved = withPart(copy, "docProps/app.xml", (xml) => xml.replace("Microsoft Excel", "LibreOffice"));
    expect(await verdict(live, saved)).toEqual({ ...SOUND, isSavedElsewhere: true });
  });
});

describe("a signature", () => {
  it("is good, by another key, wrong or missing, and a copy is sound with a good one alone", async () => {
    const [mine, other] = [await newKeyPair(), await newKeyPair()];
    const { bytes: signed } = await shareCopy(live, { signer: await signerFrom(mine.privateText) });
    const sheets = [["Plan", "Costs"], []] as const;
    const whole = { ...SOUND, sheets: [[], []] };
    expect(await verdict(live, signed)).toEqual({ ...whole, signatureFound: "good" });
    expect(await verdict(live, signed, { key: ` ${mine.publicKey}\n` })).toEqual({
      ...whole,
      signatureFound: "good",
    });
    expect(await verdict(live, signed, { key: other.publicKey })).toEqual({
      ...whole,
      isSound: false,
      signatureFound: "another key",
    });
    const unsigned = (await shareCopy(live)).bytes;
    expect(await verdict(live, unsigned, { key: mine.publicKey })).toEqual({
      ...whole,
      isSound: false,
      signatureFound: "wrong",
    });
    const cut = withPart(signed, provenancePart(signed), (xml) =>
      xml.replace(/<row r="\d+"><c r="A\d+"[^>]*><is><t[^>]*>Signature.*?<\/row>/, ""),
    );
    expect(await verdict(live, cut)).toMatchObject({
      isSound: false,
      signatureFound: "wrong",
      isAltered: false,
    });
    const forged = withPart(signed, provenancePart(signed), (xml) =>
      xml.replace(mine.publicKey, other.publicKey),
    );
    expect((await verdict(live, forged)).signatureFound).toBe("wrong");
    expect(sheets).toHaveLength(2);
  });
});

const values = (sheets: Readonly<Record<string, Readonly<Record<string, string | number>>>>): Values =>
  new Map(
    Object.entries(sheets).map(([name, cells]) => [
      name,
      new Map(Object.entries(cells).map(([cell, value]) => [cell, { value }])),
    ]),
  );

describe("what Provenance states", () => {
  it("stands beside its label, in the first two columns", async () => {
    const said = {
      A6: "Copied from",
      B6: "a.xlsx",
      AA7: "Made for",
      B7: "x",
      C8: "Made for",
      A9: "Made for",
      A10: "Sheets left out",
      B10: 3,
    };
    const { source, audience, leftOut } = await statementsOf(values({ Provenance: said }));
    expect([source, audience, leftOut]).toEqual(["a.xlsx", undefined, 3]);
  });

  it("is covered by the SHA-256 but for the rows of that itself and of the signature", () => {
    const seal = isSeal(
      values({
        Provenance: {
          A20: "SHA-256 of this copy",
          B20: "ff",
          A21: "Signature of the SHA-256",
          B2: "SHA-256 of this copy",
        },
        Plan: { A20: "SHA-256 of this copy" },
      }),
    );
    const found = [
      ["Provenance", "A20"],
      ["Provenance", "B20"],
      ["Provenance", "AB21"],
      ["Provenance", "A2"],
      ["Provenance", "B2"],
      ["Plan", "A20"],
    ].map(([sheet = "", cell = ""]) => seal(sheet, cell));
    expect(found).toEqual([true, true, true, false, false, false]);
    expect(isSeal(new Map())("Provenance", "A20")).toBe(false);
  });

  it("is nothing of a workbook without that sheet", async () => {
    expect(await statementsOf(values({ Plan: { A1: "x" } }))).toEqual({
      computedBy: undefined,
      isThisVersion: false,
      date: undefined,
      source: undefined,
      audience: undefined,
      enquiry: undefined,
      by: undefined,
      number: undefined,
      leftOut: 0,
      digest: "not stated",
      stated: undefined,
      key: undefined,
      signature: undefined,
    });
  });
});

describe("tables of answers", () => {
  const head = { A1: "Asked", A4: "Key", B4: "Line", C4: "Grade", D4: "Price", E4: "Remarks" };
  const madeTable = values({
    "Answer to enquiry": {
      ...head,
      A5: "E-AAAABBBB/L1",
      B5: "L1",
      C5: "1095",
      A6: "E-AAAABBBB/L2",
      B6: "L2",
      C6: "1075",
    },
    Paper: { A1: "x" },
  });

  it("are set in the places in which they were made, without their answers", () => {
    const found = values({
      Antwort: {
        A1: "Asked",
        A4: "Price",
        B4: "Grade",
        C4: "Line",
        D4: "Key",
        A5: 9.1,
        B5: "1075",
        C5: "L2",
        D5: "E-AAAABBBB/L2",
        A6: 7.2,
        B6: "5160",
        C6: "L1",
        D6: "E-AAAABBBB/L1",
      },
      Paper: { A1: "y" },
    });
    const aligned = alignedAnswers(madeTable, found);
    expect([...aligned.keys()].sort()).toEqual(["Answer to enquiry", "Paper"]);
    expect(aligned.get("Paper")).toEqual(values({ P: { A1: "y" } }).get("P"));
    expect(
      Object.fromEntries(
        [...(aligned.get("Answer to enquiry") ?? [])].map(([cell, held]) => [
          cell,
          "value" in held ? held.value : "",
        ]),
      ),
    ).toEqual({
      ...head,
      A5: "E-AAAABBBB/L1",
      B5: "L1",
      C5: "5160",
      A6: "E-AAAABBBB/L2",
      B6: "L2",
      C6: "1075",
    });
    expect(answersIn(tablesIn(found))).toBe(2);
  });

  it("are without the rows and the cells that were taken out", () => {
    const found = values({ "Answer to enquiry": { ...head, A5: "E-AAAABBBB/L2", B5: "L2", C5: " " } });
    const aligned = alignedAnswers(madeTable, found).get("Answer to enquiry") ?? new Map();
    expect([...aligned.keys()].filter((cell) => /[56]$/.test(cell))).toEqual(["A6", "B6"]);
    const lost =
      alignedAnswers(madeTable, values({ Paper: { A1: "x" } })).get("Answer to enquiry") ?? new Map();
    expect([...lost.keys()]).toEqual(Object.keys(head));
    expect(answersIn([])).toBe(0);
  });
});

describe("the formula behind a cell", () => {
  const array = (cell: string, ref: string, typed: string) =>
    `<c r="${cell}" cm="1"><f t="array" ref="${ref}">${typed}</f><v>1</v></c>`;
  it("stands in it, fills it, or filled it when the copy was made; none stands behind a typed one", async () => {
    const spill = (count: number, ref: string) =>
      made({
        sheets: {
          Plan: data(
            row(1, figure("A1", count), array("B1", ref, "_xlfn.SEQUENCE(A1)"), formula("D1", "A1*2")),
          ),
          Rows: data(row(1, array("A1", "A1:C1", "_xlfn.SEQUENCE(1,3)"))),
        },
      });
    const shared = (await shareCopy(spill(4, "B1:B4"))).bytes;
    const owner = ownersIn(readLiveWorkbook(spill(2, "B1:B2")), readLiveWorkbook(shared));
    const typedBehind = (sheet: string, cell: string) => owner(sheet, cell)?.formula.typed;
    expect(
      ["A1", "B1", "B2", "B4", "B5", "C1", "D1", "D2", "no"].map((cell) => typedBehind("Plan", cell)),
    ).toEqual([
      undefined,
      "SEQUENCE(A1)",
      "SEQUENCE(A1)",
      "SEQUENCE(A1)",
      undefined,
      undefined,
      "A1*2",
      undefined,
      undefined,
    ]);
    expect([typedBehind("Rows", "C1"), typedBehind("Rows", "D1"), typedBehind("None", "A1")]).toEqual([
      "SEQUENCE(1,3)",
      undefined,
      undefined,
    ]);
    expect(owner("Plan", "D1")?.note).toBe("=A1*2");
    const unlike = ownersIn(
      readLiveWorkbook(spill(2, "B1:B2")),
      readLiveWorkbook(made({ sheets: { Other: data() } })),
    );
    expect(unlike("Plan", "D1")).toMatchObject({ note: undefined });
  });
});

describe("why cells differ", () => {
  it("is found with a copy's empty cells, errors, yes and no typed into the plan, whatever stood there", async () => {
    const rows = (more: string) =>
      made({
        sheets: {
          Plan: data(
            row(1, more, formula("B1", 'IF(ISBLANK(A1),"blank",IF(ISERROR(A1),"error",A1))')),
            row(2, text("A2", "x")),
          ),
        },
      });
    const cases = [
      ["", figure("A1", 3)],
      [figure("A1", 3), ""],
      [figure("A1", 3), '<c r="A1" t="b"><v>1</v></c>'],
      [figure("A1", 3), '<c r="A1" t="e"><v>#N/A</v></c>'],
      [figure("A1", 3), text("A1", "soft")],
      ['<c r="A1" s="0"/>', figure("A1", 3)],
    ] as const;
    for (const [now, then] of cases) {
      const shared = (await shareCopy(rows(then))).bytes;
      const { differences } = await verifyCopy(rows(now), shared);
      const causes = differences.map(({ cell, cause }) => `${cell} ${cause}`);
      expect(causes, `${now} against ${then}`).toContain("B1 follows");
      expect(causes).toHaveLength(2);
    }
    // A formula that stands there now explains nothing of a figure that was typed then.
    const shared = (await shareCopy(rows(figure("A1", 5)))).bytes;
    const { differences } = await verifyCopy(rows(formula("A1", "1+1")), shared);
    expect(differences.map(({ cell, cause }) => `${cell} ${cause}`)).toEqual([
      "A1 unexplained",
      "B1 unexplained",
    ]);
  });

  it("is that no reason was found for a figure that no typed one explains", async () => {
    const later = made({ sheets: { Plan: PLAN.replace("<v>58</v>", "<v>57</v>"), Costs: data() } });
    const changed = withPart(copy, SHEET, (xml) => xml.replace("<v>49</v>", "<v>99</v>"));
    const found = await verdict(later, resealed(changed, cellsWith("D2", "99")));
    expect(found.differences.sort()).toEqual(["B1 typed", "C1 follows", "D2 unexplained"]);
  });

  it("is told in the values of both sides", async () => {
    const changed = withPart(copy, SHEET, (xml) => xml.replace("<v>49</v>", "<v>99</v>"));
    const { differences } = await verifyCopy(live, changed);
    expect(differences).toEqual([
      { sheet: "Plan", cell: "D2", cause: "unexplained", live: { value: 49 }, shared: { value: 99 } },
    ]);
    expect(valuesOf(readLiveWorkbook(changed)).get("Plan")?.get("D2")).toEqual({ value: 99 });
  });
});
