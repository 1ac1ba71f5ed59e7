import { attemptOr } from "../../core/refusal";
import { startsNeeded } from "../../core/run/starts";
import type { SheetModel, WorkbookModel } from "../model/sheet-model";
import type { Paper } from "../model/workbook-data";
import { type Batches, batchesSheet, OUTSIDE } from "./batches-sheet";
import { cautionsSheet } from "./cautions-sheet";
import { certificateSheet } from "./certificate-sheet";
import { type Check, checksSheet, checksSummary, KNOWN } from "./checks-sheet";
import { costsSheet } from "./costs-sheet";
import { Cover } from "./cover-sheet";
import { cutListSheet } from "./cut-list-sheet";
import { enquirySheet } from "./enquiry-sheet";
import { heatTreatOrderSheet } from "./heat-treat-order-sheet";
import { inspectionSheet } from "./inspection-sheet";
import { type ColumnKey, type Lines, linesSheet } from "./lines-sheet";
import { lotsReceivedSheet } from "./lots-received-sheet";
import { bestOfferSheet, offersSheet } from "./offers-sheet";
import { checkFormula, type Oddity } from "./parts/remarks";
import { millimetresOr0 } from "./parts/sheet-parts";
import { TableSheet } from "./parts/table-sheet";
import { NOT_ASSESSED } from "./parts/treatment";
import { pastLotsSheet } from "./past-lots-sheet";
import { priceBreaksSheet } from "./price-breaks-sheet";
import { quoteSheet } from "./quote-sheet";
import { readingsSheet } from "./readings-sheet";
import { type Recipes, recipeSheet, type SentSizes } from "./recipe-sheet";
import { registerSheet } from "./register-sheet";
import { routeSheet } from "./route-sheet";
import { SHEETS_OF_THE_PLAN } from "./sheets-of-the-plan";
import { shippingSheet } from "./shipping-sheet";
import { StandardRoute } from "./standard-route-sheet";
import { Stations } from "./stations-sheet";
import { steelChoiceSheet } from "./steel-choice-sheet";
import { steelEnquirySheet, steelOrderSheet } from "./steel-order-sheet";
import { steelsSheet } from "./steels-sheet";
import { EMPTY_DATA, type TemplateData } from "./template-data";
import { travellerSheet } from "./traveller-sheet";

/** Lines that an empty workbook has room for, unless another number is asked. */
export const USUAL_ROOM = 8;

/** Rows kept free below what is filled. */
const SPARE = {
  lines: 2,
  steels: 4,
  batches: 4,
  route: 8,
  readings: 24,
  inspection: 6,
  shipping: 6,
  lots: 6,
  offers: 12,
  stations: 1,
} as const;
/** Rows a line of an empty workbook gets on sheets that list several for each. */
const A_LINE = { route: 6, readings: 5, offers: 3, steels: 1.5, batches: 1.5 } as const;
/** Pieces that a line starts as a rule, and rows for their readings that a plan gets before its starts are known. */
const USUAL_STARTS = 24;
const MAX_BLANK_READINGS = 480;

/** Pieces that the lines known already start, a row for the readings of each. */
function startsIn({ lines }: TemplateData): number {
  const starts = lines.map((line) =>
    attemptOr(0, () => startsNeeded(line.good, line.yield, line.confidence)),
  );
  return starts.reduce((sum, count) => sum + count, 0);
}

function roomFor(data: TemplateData, lines: number, starts: number) {
  const room = Math.max(lines, data.lines.length + SPARE.lines);
  const least = (filled: number, spare: number, wanted: number) =>
    Math.max(filled + spare, Math.ceil(wanted));
  return {
    lines: room,
    steels: least(data.steels.length, SPARE.steels, room * A_LINE.steels),
    batches: least(data.batches.length, SPARE.batches, room * A_LINE.batches),
    route: least(data.operations.length, SPARE.route, room * A_LINE.route),
    readings: Math.max(
      least(data.readings.length, SPARE.readings, room * A_LINE.readings),
      Math.min(room * USUAL_STARTS, MAX_BLANK_READINGS),
      starts + startsIn(data),
    ),
    inspection: least(data.inspection.length, SPARE.inspection, room),
    shipping: least(data.shipping.length, SPARE.shipping, room),
    offers: least(data.offers.length, SPARE.offers, room * A_LINE.offers),
    lots: data.lots.length + Math.max(SPARE.lots, room),
    stations: least(data.swords.length, SPARE.stations, room),
    pages: data.lines.length || room,
    batchPages: Math.max(data.batches.length, room),
  };
}

type Room = ReturnType<typeof roomFor>;

function tables(data: TemplateData, room: Room) {
  const standard = new StandardRoute();
  const cover = new Cover(data.title, data.cover, standard.wholeYield);
  const lines: Lines = linesSheet(
    {
      lines: data.lines,
      recipes: () => recipes,
      stations: (line, otherwise) => stations.massOf(line, otherwise),
      otherMass: (line, taper) => stations.otherMass(line, taper),
      usual: { yield: cover.at("usualYield"), confidence: cover.at("usualConfidence") },
      batches: (at) => lineCheck(at, lines, batches),
    },
    room.lines,
  );
  const sent: SentSizes = {
    bar: (index) => `IF(N(${cuts.at("volume", index)})=0,${cuts.at("thickness", index)},0)`,
    grindAfter: cover.at("grindAfter"),
  };
  const recipes: Recipes = recipeSheet(data.recipes, () => lines, sent, room.lines);
  const steels = steelsSheet(data, { cover, lines }, room.steels);
  const enquiry = enquirySheet(data.enquiry, data.leadTimes, { cover, lines, steels });
  const stations = new Stations(data, lines, room.stations);
  const cuts = cutListSheet(data, { cover, lines, recipes, steels, stations });
  const offers = offersSheet(data.offers, { cover, cuts, steels }, room.offers);
  const route = routeSheet(data.operations, lines, room.route);
  const batches: Batches = batchesSheet(data.batches, { cover, lines, recipes, cuts }, room.batches);
  const readings = readingsSheet(data.readings, { cover, lines }, room.readings);
  const received = lotsReceivedSheet(data.lotsReceived, { cover, lines, batches, readings }, room.batches);
  const inspection = inspectionSheet(data.inspection, lines, room.inspection);
  const ceiling = (index: number) => enquiry.at("ceiling", index);
  const costs = costsSheet(data.costs, { cover, lines, cuts, batches, route, standard, ceiling });
  const breaks = priceBreaksSheet(cover, lines, costs);
  const shipping = shippingSheet(data.shipping, { cover, lines }, room.shipping);
  const lots = pastLotsSheet(data.lots, { cover, lines, batches, shipping }, room.lots);
  return {
    cover,
    lines,
    recipes,
    enquiry,
    stations,
    steels,
    cuts,
    offers,
    standard,
    route,
    batches,
    readings,
    received,
    inspection,
    costs,
    breaks,
    shipping,
    lots,
  };
}

type Tables = ReturnType<typeof tables>;

/** The lines of a workbook alone, for sheets that read them. */
export const planningLines = (data: TemplateData, lines: number): Lines =>
  tables(data, roomFor(data, lines, 0)).lines;

const counted = (what: string, source: string, formula: string): Check => ({
  what,
  source,
  expected: 0,
  formula,
  tolerance: 0,
});

/** What is odd in the workbook, counted: none of it should be there. */
function oddities(all: Tables, room: Room, chosen: readonly string[]): Check[] {
  const { cover, lines, recipes, enquiry, steels, cuts, batches, readings, inspection, costs } = all;
  const beginning = (block: string, word: string) => `COUNTIF(${block},"${word}*")`;
  return [
    ...[lines, recipes, steels, cuts, batches, readings, all.received, inspection, costs].map((table) =>
      counted(`Cells in error on ${table.name}`, table.name, `SUMPRODUCT(--ISERROR(${table.body()}))`),
    ),
    ...[lines, recipes, cuts, costs].map((table) => typedOver(table)),
    counted(
      "Steels without a heat number",
      "Steel and heats",
      `SUMPRODUCT((${steels.block("id")}<>"")*(${steels.block("heat")}=""))`,
    ),
    counted(
      "Names of steel that stand twice: the second is never read",
      "Steel and heats",
      `SUMPRODUCT((${steels.block("id")}<>"")*(COUNTIF(${steels.block("id")},${steels.block("id")})>1))`,
    ),
    counted("Mill's figures that fail", "Steel and heats", `COUNTIF(${steels.block("verdict")},"*FAIL*")`),
    counted(
      "Steel received that needs a look",
      "Steel and heats",
      beginning(steels.block("arrival"), "CHECK"),
    ),
    counted("Hardened lots that fail", "Lots received", beginning(all.received.block("verdict"), "FAIL")),
    counted("Prices too old", "Steel and heats", beginning(steels.block("age"), "CHECK")),
    counted("Quantities changed since the order", "Enquiry", beginning(enquiry.block("changed"), "CHANGED")),
    counted(
      "Lines with fewer starts than good",
      "Cut list",
      `SUMPRODUCT((${cuts.block("line")}<>"")*(${cuts.block("starts")}<${cuts.block("good")}))`,
    ),
    counted("Readings above the band", "Hardness readings", beginning(readings.block("status"), "too hard")),
    counted("Readings below the band", "Hardness readings", beginning(readings.block("status"), "too soft")),
    counted(
      "Readings where the steel is too thin",
      "Hardness readings",
      beginning(readings.block("status"), "CHECK: too thin"),
    ),
    counted("Blade numbers used twice", "Hardness readings", beginning(readings.block("status"), "TWICE")),
    counted("Lots that fail inspection", "Inspection", beginning(inspection.block("decision"), "FAIL")),
    counted(
      "Lines whose cost leaves out steel or labour",
      "Costs, Cut list, Cover",
      `SUMPRODUCT((${costs.block("line")}<>"")*((${costs.block("steel")}="")+(${costs.block("steel")}=0)+(${costs.block("labour")}=0)>0))`,
    ),
    counted(
      "Starts without a row for their readings: template --from makes room",
      "Lines, Hardness readings",
      `MAX(0,SUMIF(${lines.block("starts")},">0")-ROWS(${readings.block("blade")}))`,
    ),
    counted(
      "Batches outside without a page of their order",
      "Heat batches, Heat-treat order",
      `MAX(0,COUNTIF(${batches.block("where")},"${OUTSIDE}")-${room.batchPages})`,
    ),
    counted("Prices above the ceiling", "Costs", beginning(costs.block("ceiling"), "HIGH")),
    ...[lines, cuts, batches].map((table) =>
      counted(
        `Cross-checks that fail on ${table.name}`,
        table.name,
        beginning(table.block("check" as never), "CHECK"),
      ),
    ),
    counted("Hours that do not go with the route", "Costs, Route", beginning(costs.block("check"), "CHECK")),
    counted("Lines whose hardness is out of reach: the quote stops", "Lines, Quote", outOfReach(lines)),
    counted(
      "Lines that do not harden through where they should",
      "Lines, Recipe",
      `COUNTIF(${lines.block("through")},"does not*")`,
    ),
    counted(
      "Lines that were not assessed",
      "Lines, Recipe",
      `COUNTIF(${lines.block("status")},"${NOT_ASSESSED}")`,
    ),
    counted("Days on the cover that cannot be", "Cover", cover.oddDays),
    ...[enquiry, steels, readings, all.received, all.shipping].map((table) =>
      counted(
        `Days that cannot be on ${table.name}`,
        table.name,
        beginning(table.block("days" as never), "CHECK"),
      ),
    ),
    counted(
      "Rows typed under a table, where nothing counts them",
      "the sheets with tables",
      filledBelow(all, chosen),
    ),
  ];
}

const outOfReach = (lines: Lines) =>
  `COUNTIF(${lines.block("status")},"out of reach")+COUNTIF(${lines.block("status")},"does not harden")`;

function filledBelow(all: Tables, chosen: readonly string[]): string {
  const tables = Object.values(all).filter((table) => table instanceof TableSheet) as TableSheet<string>[];
  const counts = tables.filter(({ name }) => chosen.includes(name)).map((table) => table.filledBelow);
  return counts.filter((count) => count !== "").join("+");
}

/** Cells of a line that take a figure, or a length with its unit, and what each is called. */
const FIGURES = {
  good: ["good wanted", "count"],
  length: ["length", "length"],
  width: ["width", "length"],
  thickness: ["thickness", "length"],
  tipWidth: ["tip width", "length"],
  tipThickness: ["tip thickness", "length"],
  edge: ["behind edge", "length"],
} as const;

/**
 * A word where a figure belongs is told at once, also in a line that is typed by half: no figure begins with a letter.
 * A text such as 1,000 is 1000 in one country and 1 in another.
 */
function noFigures(at: (key: ColumnKey) => string): Oddity[] {
  return Object.entries(FIGURES).flatMap(([key, [name, kind]]) => {
    const cell = at(key as keyof typeof FIGURES);
    const letter = `CODE(UPPER(${cell}))`;
    const comma = `FIND(",",${cell})`;
    const isThousand = `ISTEXT(${cell}),LEFT(${cell},1)<>"0",${comma}>1,LEN(${cell})-${comma}=3,ISNUMBER(--RIGHT(${cell},3))`;
    return [
      {
        when: `IFERROR(AND(${letter}>=65,${letter}<=90),FALSE)`,
        said: `"${name}: """&${cell}&""" is no ${kind}"`,
      },
      {
        when: `IFERROR(AND(${isThousand}),FALSE)`,
        said: `"${name}: """&${cell}&""" reads as "&SUBSTITUTE(${cell},",","")&" or as "&SUBSTITUTE(${cell},",",".")&": write one of them"`,
      },
    ];
  });
}

/** What is odd about a line across the sheets. */
function lineCheck(at: (key: ColumnKey) => string, lines: Lines, batches: Batches): string {
  const line = at("line");
  const inBatches = `SUMIF(${batches.block("line")},${line},${batches.block("pieces")})`;
  return checkFormula([
    { when: `COUNTIF(${lines.block("line")},${line})>1`, said: '"stands in the table twice"' },
    { when: `COUNTIF(${batches.block("line")},${line})=0`, said: '"in no heat batch"' },
    {
      when: `IFERROR(AND(COUNTIF(${batches.block("line")},${line})>0,${inBatches}<>${at("starts")}),FALSE)`,
      said: `${inBatches}&" of "&${at("starts")}&" starts in heat batches"`,
    },
    {
      when: `COUNTIF(${at("length")}:${at("edge")},"<0")+COUNTIF(${at("bevel")}:${at("rib")},"<0")>0`,
      said: '"a length below 0"',
    },
    {
      when: `AND(${millimetresOr0(at("length"))}>0,${millimetresOr0(at("length"))}<${millimetresOr0(at("width"))})`,
      said: `"length of "&${at("length")}&" mm, the width "&${at("width")}&": are they in each other's place?"`,
    },
    ...noFigures(at),
  ]);
}

function typedOver({
  name,
  workedBlocks,
}: {
  readonly name: string;
  readonly workedBlocks: readonly string[];
}): Check {
  const parts = workedBlocks.map((block) => `SUMPRODUCT(--NOT(ISFORMULA(${block})))`);
  return counted(`Worked-out cells typed over on ${name}`, name, parts.join("+"));
}

/** Every sheet of the planning workbook, the cover first. */
const ALL_SHEETS: readonly string[] = SHEETS_OF_THE_PLAN.map(({ name }) => name);

function sheetsOf(data: TemplateData, room: Room, chosen: readonly string[]): SheetModel[] {
  const all = tables(data, room);
  const { cover, lines, recipes, enquiry, stations, steels, cuts, standard, route, batches, costs } = all;
  const checks = [...KNOWN, ...oddities(all, room, chosen)];
  const purposes = SHEETS_OF_THE_PLAN.filter(({ name }) => name !== "Cover" && chosen.includes(name));
  const first = data.lines[0]?.steel ?? "1084";
  const sheets = [
    cover.model(
      purposes.map(({ name, purpose }) => [name, purpose]),
      checksSummary(checks.length),
    ),
    lines.model(),
    recipes.model(),
    enquiry.model(),
    stations.model(),
    steels.model(),
    steelChoiceSheet(
      lines,
      steels,
      data.lines.map(({ line }) => line),
    ),
    cuts.model(),
    standard.model(),
    route.model(),
    batches.model(),
    all.readings.model(),
    all.received.model(),
    all.inspection.model(),
    costs.model(),
    all.breaks.model(),
    quoteSheet({ cover, lines, costs, enquiry }),
    steelEnquirySheet({ cover, cuts, steels }, room.pages),
    all.offers.model(),
    bestOfferSheet(all.offers, { cover, cuts, steels }),
    steelOrderSheet({ cover, cuts, steels }, room.pages),
    heatTreatOrderSheet({ cover, lines, recipes, cuts, steels, batches }, room.batchPages),
    certificateSheet(cover, steels, data.elements),
    travellerSheet({ cover, lines, recipes, cuts, steels, batches, route, standard }, room.pages),
    all.shipping.model(),
    all.lots.model(),
    registerSheet().model(),
    cautionsSheet(first),
    checksSheet(checks),
  ];
  return sheets.filter(({ name }) => chosen.includes(name));
}

/**
 * The planning workbook of a run, from the enquiry to the shipped lot. Formulas in sight stand one to a cell, none fills
 * others, so that the file outlives a reader without the add-in; those that fill others stand in hidden columns.
 *
 * @param data - What is known already; empty without it.
 * @param lines - Lines of the order to leave room for, 1 to 500; a run that is known keeps two free lines in any case.
 * @param paper - Sizes of paper that it is printed on.
 * @param starts - Pieces that are started, where it is known: each gets a row for its readings.
 * @param chosen - Names of the sheets that are wanted; what their formulas read must be among them.
 */
export function planningTemplate(
  data: TemplateData = EMPTY_DATA,
  lines: number = USUAL_ROOM,
  chosen: readonly string[] = ALL_SHEETS,
  paper: Paper = "A4",
  starts = 0,
): WorkbookModel {
  const { run, forge } = data.cover;
  const name =
    run === undefined ? "Planning workbook" : `Run ${run}${forge === undefined ? "" : `, ${forge}`}`;
  const sheets = sheetsOf(data, roomFor(data, lines, starts), chosen);
  return { name, sheets: sheets.map((sheet) => ({ ...sheet, print: { ...sheet.print, paper } })) };
}
