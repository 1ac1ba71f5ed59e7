import type { Cover } from "./cover-sheet";
import type { Lines } from "./lines-sheet";
import { dayCheck } from "./parts/day-checks";
import { listedWords } from "./parts/listed-words";
import { checkFormula } from "./parts/remarks";
import { inMillimetres } from "./parts/sheet-parts";
import {
  type CellOf,
  calcColumn,
  DATE_FORMAT,
  dateSerial,
  eitherColumn,
  pick,
  STEEL_WIDTH,
  type TableColumn,
  TableSheet,
  typedColumn,
} from "./parts/table-sheet";
import type { TemplateData } from "./template-data";

type FixedKey =
  | "id"
  | "grade"
  | "standard"
  | "heat"
  | "supplier"
  | "form"
  | "condition"
  | "width"
  | "thickness"
  | "kilograms"
  | "rack"
  | "price"
  | "priced"
  | "age"
  | "certificate"
  | "verdict"
  | "came"
  | "cameKilograms"
  | "cameBars"
  | "stamp"
  | "days"
  | "arrival"
  | "promised";

/** Columns of the analysis have the element's symbol for a key. */
export type SteelKey = FixedKey | `%${string}`;

/** A price older than this is asked for again; common practice, no source. */
const DAYS_FRESH = 180;

/** Up to this thickness flat bar is usually bought ground; common practice, no source. */
const GROUND_MM = 4;

/** A thin bar is bought ground; a thicker one is rolled, and has to lose its skin. */
function barThickness(blade: string, cover: Cover): string {
  const [ground, rolled] = [cover.at("blankThicker"), cover.at("rolledThicker")];
  return `${blade}+IF(${blade}+${ground}<=${GROUND_MM},${ground},${rolled})`;
}

type LineKey = Parameters<Lines["at"]>[0];

const elementKey = (element: string): SteelKey => `%${element}`;

function verdictFormula(at: CellOf<SteelKey>, elements: readonly string[]): string {
  const [first, last] = [elements[0], elements.at(-1)].map((element) => at(elementKey(element ?? "")));
  const symbols = `{${elements.map((element) => `"${element}"`).join(",")}}`;
  const call = `BLADE.CERTIFICATE(${at("grade")},${symbols},${first}:${last})`;
  const told = `INDEX(${call},ROWS(${call}),5)`;
  const rest = `MID(${told},5,200)`;
  const word = `IF(LEFT(${told},4)="fail","FAIL"&${rest},IF(LEFT(${told},4)="pass","PASS"&${rest},"CHECK: "&${told}))`;
  const analysed = `COUNT(${first}:${last})=0`;
  const heat = `IF(${at("heat")}="","CHECK: no heat number; ","")`;
  return `IF(${analysed},"CHECK: no analysis",${heat}&${word})`;
}

/** Less than this share of what was bought is a short delivery; common practice, no source. */
const SHORT = 0.98;

/** What is odd about goods received: heat, mass, certificate. */
function arrivalFormula(at: CellOf<SteelKey>): string {
  const bought = `N(${at("kilograms")})`;
  const came = `N(${at("cameKilograms")})`;
  const odd = checkFormula([
    { when: `${at("stamp")}=""`, said: `"no heat number on the bar noted"` },
    {
      when: `AND(${at("stamp")}<>"",${at("heat")}<>"",${at("stamp")}<>${at("heat")})`,
      said: `"the bar says "&${at("stamp")}&", the certificate "&${at("heat")}`,
    },
    {
      when: `AND(${came}>0,${came}<${SHORT}*${bought})`,
      said: `TEXT(${bought}-${came},"0.0")&" kg short"`,
    },
    { when: `LEFT(${at("verdict")},4)="FAIL"`, said: `"the mill's figures fail"` },
    { when: `LEFT(${at("verdict")},5)="CHECK"`, said: `"the mill's figures are open"` },
  ]);
  return `IF(${at("came")}&${at("cameKilograms")}&${at("cameBars")}="","not here yet",${odd})`;
}

/** Steels bought and in the rack: heat, price, certificate and what the mill found. */
export function steelsSheet(
  data: TemplateData,
  { cover, lines }: { readonly cover: Cover; readonly lines: Lines },
  count: number,
): TableSheet<SteelKey> {
  const { steels, heats, prices, blanks, elements, received } = data;
  const receivedOn = pick(received, 0).map((date) => (typeof date === "string" ? dateSerial(date) : null));
  const dates = pick(prices, 1).map((date) => (typeof date === "string" ? dateSerial(date) : null));
  // Until another steel is typed a row holds that of the line in the same place, a little larger than its blade.
  const ofLine = (index: number, formula: (cell: (key: LineKey) => string) => string, ...keys: LineKey[]) => {
    if (index >= lines.count) return `""`;
    const cell = (key: LineKey) => lines.at(key, index);
    const empty = keys.map((key) => `${cell(key)}=""`);
    return `IF(OR(${empty.join(",")}),"",${formula(cell)})`;
  };
  const gradeKnown = { needs: (at: CellOf<SteelKey>) => [at("grade")] };
  const fixed: Record<FixedKey, TableColumn<SteelKey>> = {
    id: eitherColumn("Steel", 48, pick(steels, 0), (_, index) =>
      ofLine(index, () => `"S${index + 1}"`, "line", "steel"),
    ),
    grade: eitherColumn(
      "Grade",
      STEEL_WIDTH,
      pick(heats, 1),
      (_, index) => ofLine(index, (cell) => cell("steel"), "steel"),
      {
        words: listedWords("STEELS"),
      },
    ),
    standard: calcColumn("Standard", 130, (at) => `INDEX(BLADE.STEEL(${at("grade")}),1,3)`, {
      wrap: true,
      ...gradeKnown,
    }),
    heat: typedColumn("Heat no.", 76, pick(heats, 2)),
    supplier: eitherColumn("Supplier", 136, pick(steels, 3), () => `${cover.at("supplier")}&""`, {
      wrap: true,
    }),
    form: eitherColumn(
      "Form",
      110,
      pick(steels, 1),
      (at) => `IF(N(${at("thickness")})<=${GROUND_MM},"flat bar, ground","flat bar, hot rolled")`,
      { wrap: true },
    ),
    condition: eitherColumn("Condition", 130, pick(steels, 2), () => `"annealed"`, { wrap: true }),
    width: eitherColumn(
      "Width mm",
      56,
      pick(blanks, 1),
      (_, index) =>
        ofLine(
          index,
          (cell) => `ROUNDUP(${inMillimetres(cell("width"))}+${cover.at("blankWider")},0)`,
          "width",
        ),
      { format: "0.0" },
    ),
    thickness: eitherColumn(
      "Thickness mm",
      70,
      pick(blanks, 2),
      (_, index) =>
        ofLine(index, (cell) => barThickness(inMillimetres(cell("thickness")), cover), "thickness"),
      { format: "0.0" },
    ),
    kilograms: typedColumn("Bought kg", 58, pick(steels, 4), { format: "0.0" }),
    rack: typedColumn("In the rack kg", 58, pick(blanks, 4), { format: "0.0" }),
    price: typedColumn("Price a kg", 58, pick(prices, 0), { format: "#,##0.00" }),
    priced: typedColumn("Price of", 82, dates, { format: DATE_FORMAT }),
    age: calcColumn(
      "Price",
      106,
      (at) =>
        `IF(OR(${at("priced")}="",${cover.at("asOf")}=""),"",IF(${cover.at("asOf")}-${at("priced")}>${DAYS_FRESH},"CHECK: "&(${cover.at("asOf")}-${at("priced")})&" days old","OK"))`,
      { isStatus: true, wrap: true },
    ),
    certificate: eitherColumn("Certificate EN 10204", 88, pick(steels, 5), () => `"3.1"`, {
      words: ["2.1", "2.2", "3.1", "3.2"],
    }),
    verdict: calcColumn("Mill's figures", 190, (at) => verdictFormula(at, elements), {
      isStatus: true,
      wrap: true,
      ...gradeKnown,
    }),
    promised: typedColumn("Delivery", 82, []),
    came: typedColumn("Received on", 82, receivedOn, { format: DATE_FORMAT }),
    cameKilograms: typedColumn("Received kg", 66, pick(received, 1), { format: "0.0" }),
    cameBars: typedColumn("Received bars", 66, pick(received, 2), { format: "0" }),
    stamp: typedColumn("Heat no. on the bar", 82, pick(received, 3)),
    days: calcColumn(
      "Dates",
      120,
      (at) =>
        dayCheck([
          { cell: at("priced"), name: "price", notAfter: [[cover.today, "the day of the figures"]] },
          {
            cell: at("promised"),
            name: "delivery",
            isWeek: true,
            notBefore: [[cover.today, "the day of the figures"]],
            notAfter: [[cover.at("due"), "the day the run is due"]],
          },
          { cell: at("came"), name: "received", notAfter: [[cover.at("due"), "the day the run is due"]] },
        ]),
      { isStatus: true, wrap: true },
    ),
    arrival: calcColumn("What came", 190, arrivalFormula, { isStatus: true, wrap: true, ...gradeKnown }),
  };
  const analysis = Object.fromEntries(
    elements.map((element, position) => [
      elementKey(element),
      typedColumn<SteelKey>(`${element} %`, 52, pick(heats, 3 + position), { format: "0.00#" }),
    ]),
  );
  return new TableSheet(
    "Steel and heats",
    { ...fixed, ...analysis } as Record<SteelKey, TableColumn<SteelKey>>,
    count,
    {
      title: "Steel and heats: what was bought, what it cost, what the mill found",
      note: "A row a heat: several of one grade have names of their own, and the cut list says which a line is cut from. Mass %, an empty cell was not analysed. The heat number on the certificate, the bar and the delivery note must be one.",
      frozenColumns: 2,
    },
  );
}

export type Steels = TableSheet<SteelKey>;
