import { beforeAll, describe, expect, it } from "vitest";
import { alteredLines } from "../../../src/workbook/answers/altered";
import { answersQuestion } from "../../../src/workbook/answers/answers-question";
import { type Collected, collect } from "../../../src/workbook/answers/collect";
import type { Proposal } from "../../../src/workbook/answers/proposal";
import { takeAnswers } from "../../../src/workbook/answers/take";
import { countWords } from "../../../src/workbook/answers/told";
import { csvFiles } from "../../../src/workbook/share/csv";
import { shareCopy } from "../../../src/workbook/share/share-copy";
import { remarkGroups } from "../../../src/workbook/share/verify/told";
import { verifyCopy } from "../../../src/workbook/share/verify/verify-copy";
import { faultsOf } from "../packages";
import { storedValues } from "../template-cells";
import { type Answers, filledIn, renamed, sorted, widened } from "./fill";
import { OFFER_OF_C60 } from "./invented-answers";
import { planR07 } from "./plans";

// Answers are filled in and saved by another .xlsx library, and what the plan holds afterwards is read by it. The
// analysis is an invented heat of C60 inside EN ISO 683-1 (C 0.57 to 0.65, Mn 0.60 to 0.90); every firm is invented.

const LONG = 300_000;
const QUAY = "Old Quay Metals";

const ORDER: Answers = {
  "L4/S4": OFFER_OF_C60,
  "L5/S5": { Price: 340, "Price for": "100 kg", "Week of delivery": "2026-10-12", "Heat no.": "Q5-0412" },
};
const ENQUIRY: Answers = {
  "L4/S4": {
    Price: 3.05,
    "Minimum charge": 80,
    "Bar lengths in stock mm": "3 m; 6 m",
    "Week of delivery": 42,
  },
};

let plan: Uint8Array;
let sent: Uint8Array;
let answered: Uint8Array;
let found: Collected;

const source = (bytes: Uint8Array, name = "answer.xlsx") => ({ name, bytes });
const one = ({ proposals }: Collected, line: string, asked: string, paper = "Answer to order") =>
  proposals.find(
    (proposal) => proposal.line === line && proposal.asked === asked && proposal.paper === paper,
  );

/** What an answer would do to the plan, without where it came from. */
const essence = ({ line, asked, readAs, state, changes, paper }: Proposal) =>
  JSON.stringify([paper, line, asked, readAs, state, changes]);
const essences = ({ proposals }: Collected) => proposals.map(essence).sort();

beforeAll(async () => {
  plan = await planR07();
  sent = (await shareCopy(plan, { choice: { kind: "for", whom: "supplier", name: QUAY } })).bytes;
  answered = await filledIn(
    sent,
    { "Answer to order": ORDER, "Answer to enquiry": ENQUIRY },
    { by: "order desk", on: "2026-09-22" },
  );
  found = await collect(plan, [source(answered)]);
}, LONG);

describe("an order of R-07 that comes home", () => {
  it("reads every answer as the functions read, and counts them", () => {
    expect(found.remarks).toEqual([]);
    // Two lines of 8 and of 20 open cells; 4 + 9 + 4 of them hold something.
    expect(countWords(found)).toMatch(/^Cells out 56, answered 17; /);
    expect(one(found, "L4/S4", "Price")).toMatchObject({
      readAs: "3.05",
      from: "order desk",
      on: "2026-09-22",
    });
    // 340 for 100 kg is 3.40 a kg.
    expect(one(found, "L5/S5", "Price")).toMatchObject({ readAs: "3.4" });
    expect(one(found, "L4/S4", "Si %")).toMatchObject({ readAs: "0.25", state: "fine" });
    expect(one(found, "L4/S4", "S %")).toMatchObject({ readAs: "0.005", state: "doubtful" });
    // 12 October 2026 is the Monday of ISO week 42.
    expect(one(found, "L5/S5", "Week of delivery")).toMatchObject({ readAs: "2026-W42" });
    expect(one(found, "L4/S4", "Bar lengths in stock mm", "Answer to enquiry")).toMatchObject({
      readAs: "3000; 6000",
    });
  });

  it(
    "writes what is accepted into the plan's own cells, remembers it, and takes nothing twice",
    async () => {
      const accepted = found.proposals.filter(({ state }) => state === "fine");
      const after = await takeAnswers(plan, accepted, "2026-09-23");
      expect(faultsOf(after)).toEqual([]);
      const values = await storedValues(after);
      expect(values.figure("Steel and heats", "S4", "Heat no.")).toBe("Q4-7731");
      expect(values.figure("Steel and heats", "S4", "C %")).toBe(0.6);
      // Left out: doubtful, and not named.
      expect(values.figure("Steel and heats", "S4", "S %")).not.toBe(0.005);
      const log = values
        .rows("Answers")
        .slice(4)
        .filter(([copy]) => copy !== undefined);
      expect(log).toHaveLength(accepted.length);
      expect(await verifyCopy(after, answered)).toMatchObject({
        digest: "as stated",
        isPlanChanged: true,
        isAltered: false,
      });
      const again = await collect(after, [source(answered)]);
      const states = again.proposals.map(({ state }) => state);
      expect(states.filter((state) => state === "taken")).toHaveLength(accepted.length);
      expect(states).not.toContain("fine");
    },
    LONG,
  );

  it(
    "tells the answered copy from an altered one",
    async () => {
      expect(await verifyCopy(plan, answered)).toMatchObject({
        digest: "as stated",
        answers: 17,
        isSavedElsewhere: true,
        isPlanChanged: false,
        differences: [],
      });
    },
    LONG,
  );
});

it(
  "finds a told figure that was altered, and says so where the answers are brought in",
  async () => {
    const altered = await filledIn(sent, { "Answer to order": ORDER }, {}, (workbook) => {
      const sheet = workbook.getWorksheet("Answer to order");
      if (sheet !== undefined) sheet.getCell("C5").value = "1084";
    });
    const again = await collect(plan, [source(altered)]);
    const seen = await verifyCopy(plan, altered);
    expect(seen).toMatchObject({ digest: "not as stated", isAltered: true, isPlanChanged: false });
    expect(seen.differences).toMatchObject([{ sheet: "Answer to order", cell: "C5", cause: "typed" }]);
    // The cell itself, in the words of verify.
    expect(again.altered).toEqual([{ name: "answer.xlsx", groups: remarkGroups(seen) }]);
    expect(alteredLines(again.altered[0] ?? { name: "", groups: [] })).toEqual([
      "answer.xlsx: values outside the cells for answers were changed.",
      "answer.xlsx: Typed otherwise in the two files: Answer to order!C5 live C60, copy 1084",
    ]);
    const question = await answersQuestion(plan, [source(altered)]);
    expect(question.remarks.at(-1)).toContain("Answer to order!C5 live C60, copy 1084");
    expect(one(again, "L4/S4", "Price")?.why.join()).toContain(
      "Grade was 1084 in the copy and is C60 in the plan now",
    );
  },
  LONG,
);

it(
  "takes a customer's yes, and leaves a change and a no to the smith",
  async () => {
    const customer = "Marrow & Kettle Provisions";
    const { bytes } = await shareCopy(plan, { choice: { kind: "for", whom: "customer", name: customer } });
    const back = await filledIn(bytes, {
      "Answer to quote": {
        L1: { Answer: "accepted" },
        L2: { Answer: "changed", "Pieces wanted": 30 },
        L3: { Answer: "refused", Remarks: "not this year" },
        L4: { Answer: "maybe" },
      },
    });
    const quoted = await collect(plan, [source(back)]);
    const states = quoted.proposals
      .filter(({ asked }) => asked === "Answer")
      .map(({ line, state, readAs }) => [line, state, readAs]);
    // R-07 quotes 24, 40, 12 and 6 pieces of these lines.
    expect(states.sort()).toEqual([
      ["L1", "fine", "accepted: 24"],
      ["L2", "doubtful", "changed: 30"],
      ["L3", "doubtful", "refused: 0"],
      ["L4", "refused", ""],
    ]);
    expect(quoted.proposals[0]?.from).toBe(customer);
  },
  LONG,
);

describe("the same answers, whatever was done to the file", () => {
  const forms = { "Answer to order": ORDER, "Answer to enquiry": ENQUIRY };
  const head = { by: "order desk", on: "2026-09-22" };

  it.each([
    ["rows sorted", sorted("Answer to order")],
    ["columns added in front", widened("Answer to order")],
    ["the sheet renamed", renamed("Answer to order", "unser Angebot")],
  ])(
    "comes home alike with %s",
    async (_, handling) => {
      const bytes = await filledIn(sent, forms, head, handling);
      const again = await collect(plan, [source(bytes)]);
      expect(again.altered).toEqual([]);
      expect(essences(again)).toEqual(essences(found));
    },
    LONG,
  );

  it(
    "comes home alike as CSV only, and pasted with tabs",
    async () => {
      const files = csvFiles(answered).filter(({ name }) => name.startsWith("Answer"));
      const csv = files.map(({ name, text }) => source(new TextEncoder().encode(text), name));
      expect(essences(await collect(plan, csv))).toEqual(essences(found));
      const pasted = files.map(({ text }) =>
        text
          .replace(/^\uFEFF/, "")
          .split("\r\n")
          .map((line) => line.replace(/,(?=(?:[^"]*"[^"]*")*[^"]*$)/g, "\t"))
          .join("\r\n"),
      );
      const mail = source(new TextEncoder().encode(pasted.join("\r\n")), "mail.txt");
      expect(essences(await collect(plan, [mail]))).toEqual(essences(found));
    },
    LONG,
  );
});
