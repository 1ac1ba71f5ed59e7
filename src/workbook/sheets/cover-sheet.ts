import { USUAL_CONFIDENCE } from "../../core/run/starts";
import { USUAL_KERF, USUAL_TRIM } from "../../core/stock/cutting-limits";
import { USUAL_LOSSES, USUAL_TONG_HOLD } from "../../core/stock/forge-length";
import { cellName } from "../../formula/addresses";
import { textLiteral } from "../../formula/tokens";
import type { SheetModel } from "../model/sheet-model";
import { type DayCell, dayCheck } from "./parts/day-checks";
import {
  type Filled,
  field,
  fixedName,
  heading,
  helperSheet,
  mark,
  note,
  type Row,
  title,
  typed,
  words,
  worked,
} from "./parts/sheet-parts";
import { DATE_FORMAT, dateSerial } from "./parts/table-sheet";
import type { CoverData } from "./template-data";

interface CoverField {
  readonly label: string;
  readonly value: number | string | null;
  /** Worked out until it is typed over, without an equals sign. */
  readonly otherwise?: string;
  readonly format?: string;
  readonly remark?: string;
  /** Days of the cover that this one must not lie before or after. */
  readonly days?: { readonly notBefore?: readonly DayKey[]; readonly notAfter?: readonly DayKey[] };
}

const NAME = "Cover";
const FIRST = 3;

type DayKey = "enquired" | "due" | "today";

/** What the days of the cover are called in a remark. */
const DAY_WORDS: Readonly<Record<DayKey, string>> = {
  enquired: "the enquiry",
  due: "the day it is due",
  today: "the day of the figures",
};

const day = (date: string | undefined) => (date === undefined ? null : dateSerial(date));

/** Papers are numbered after the run until somebody numbers them otherwise. */
const RUN = fixedName(FIRST, 1);
const numbered = (letter: string) => `IF(${RUN}="","",${RUN}&"-${letter}")`;

function fieldsOf(cover: CoverData, routeYield: string) {
  const given = <Value>(value: Value | undefined) => value ?? null;
  return {
    run: { label: "Run", value: given(cover.run) },
    revision: {
      label: "Revision",
      value: cover.revision ?? "A",
      remark: "a new letter whenever an order goes out again",
    },
    forge: { label: "Forge", value: given(cover.forge), remark: "heads every paper that goes out" },
    address: { label: "Address", value: given(cover.address) },
    contact: { label: "Telephone, e-mail", value: given(cover.contact) },
    tax: { label: "Tax number", value: given(cover.tax) },
    customers: { label: "Customer", value: given(cover.customers) },
    customerAddress: { label: "Customer's address", value: given(cover.customerAddress) },
    enquired: {
      label: "Enquiry of",
      value: day(cover.enquired),
      format: DATE_FORMAT,
      days: { notAfter: ["today", "due"] },
    },
    due: { label: "Due", value: day(cover.due), format: DATE_FORMAT, days: { notBefore: ["today"] } },
    asOf: {
      label: "Figures as of",
      value: day(cover.asOf),
      format: DATE_FORMAT,
      days: {},
      remark: "the age of a price counts to this day",
    },
    steelBy: {
      label: "Steel wanted by",
      value: day(cover.steelBy),
      format: DATE_FORMAT,
      days: { notBefore: ["today"], notAfter: ["due"] },
      remark: "stands on every steel order",
    },
    units: {
      label: "Units",
      value: "mm, g, °C (°F beside it)",
      remark: "the headings say which; text may state its own, such as 1/4 in",
    },
    currency: { label: "Currency", value: given(cover.currency) },
    hourRate: { label: "Labour an hour", value: given(cover.hourRate), format: "#,##0.00" },
    overheadRate: { label: "Overhead an hour", value: given(cover.overheadRate), format: "#,##0.00" },
    energyPrice: { label: "Price a kWh", value: given(cover.energyPrice), format: "0.000" },
    priceStep: { label: "Prices rounded to", value: cover.priceStep ?? 1, format: "#,##0.00" },
    usualYield: {
      label: "Usual yield, share",
      value: null,
      otherwise: routeYield,
      format: "0.00",
      remark: "of a line without its own; the yields of the standard route together",
    },
    usualConfidence: {
      label: "Usual confidence",
      value: USUAL_CONFIDENCE,
      format: "0.00",
      remark: "of having enough good ones",
    },
    blankExtra: {
      label: "Blank longer than blade mm",
      value: 130,
      format: "0",
      remark: "the tang and a little; common practice, no source; a line may have its own on the cut list",
    },
    blankWider: { label: "Bar wider than blade mm", value: 2, format: "0.0" },
    blankThicker: {
      label: "Bar thicker than blade mm",
      value: 0.5,
      format: "0.0",
      remark: "of a ground bar; common practice, no source",
    },
    rolledThicker: {
      label: "Rolled bar thicker than blade mm",
      value: 1,
      format: "0.0",
      remark: "scale and skin without carbon come off, 0.4 to 0.8 mm a face; common practice, no source",
    },
    grindAfter: {
      label: "Ground off after hardening, mm a face",
      value: 0.2,
      format: "0.00",
      remark:
        "a line is hardened so much thicker, up to its bar: 0.15 to 0.4 on ground stock, 0.4 to 0.8 on rolled; common practice, no source",
    },
    barLength: { label: "Bar length mm", value: 3000, format: "0" },
    belts: {
      label: "Belts a start",
      value: null,
      format: "#,##0.00",
      remark: "money, of a line without its own",
    },
    fittings: { label: "Fittings a good one", value: null, format: "#,##0.00" },
    packing: { label: "Packing a good one", value: null, format: "#,##0.00" },
    margin: { label: "Margin, share of price", value: null, format: "0.00" },
    outsideKg: { label: "Outside hardening a kg", value: null, format: "#,##0.00" },
    outsideLeast: { label: "Outside hardening at least", value: null, format: "#,##0.00" },
    outsideSetUp: { label: "Outside hardening set-up", value: null, format: "#,##0.00" },
    kerf: { label: "Kerf of the saw mm", value: cover.kerf ?? USUAL_KERF, format: "0.0" },
    trim: {
      label: "Trim a bar mm",
      value: cover.trim ?? USUAL_TRIM,
      format: "0.0",
      remark: "both ends together",
    },
    forgeGrind: {
      label: "Forged: ground off, share",
      value: cover.forgeGrind ?? USUAL_LOSSES.grind,
      format: "0.00",
      remark: "of the finished volume; common practice, no source",
    },
    forgeScale: {
      label: "Forged: scale, share",
      value: cover.forgeScale ?? USUAL_LOSSES.scale,
      format: "0.00",
    },
    forgeCrop: {
      label: "Forged: cut off, share",
      value: cover.forgeCrop ?? USUAL_LOSSES.crop,
      format: "0.00",
    },
    tong: { label: "Forged: tong hold mm", value: cover.tong ?? USUAL_TONG_HOLD, format: "0" },
    furnaceKg: {
      label: "Furnace takes kg a load",
      value: given(cover.furnaceKg),
      format: "0.0",
      remark: "a batch over it is remarked on; empty: not checked",
    },
    furnaceLength: { label: "Furnace takes mm", value: given(cover.furnaceLength), format: "0" },
    quoteNumber: { label: "Quote no.", value: given(cover.quoteNumber), otherwise: numbered("Q") },
    validDays: { label: "Quote valid, days", value: cover.validDays ?? 30, format: "0" },
    deposit: { label: "Deposit, share", value: cover.deposit ?? 0.4, format: "0 %" },
    orderNumber: { label: "Steel order no.", value: given(cover.orderNumber), otherwise: numbered("S") },
    treatNumber: { label: "Heat-treat order no.", value: given(cover.treatNumber), otherwise: numbered("H") },
    supplier: { label: "Steel supplier", value: given(cover.supplier) },
    treater: { label: "Heat treater", value: given(cover.treater) },
    prepared: { label: "Prepared by", value: given(cover.prepared) },
    checked: { label: "Checked by", value: null },
    legalBy: {
      label: "Legal check done by",
      value: null,
      remark: "what may be made, sold, carried and posted differs by place",
    },
    legalOn: {
      label: "Legal check on",
      value: null,
      format: DATE_FORMAT,
      days: { notBefore: ["enquired"], notAfter: ["due"] },
    },
    legalFor: { label: "Legal check for", value: null, remark: "places it was done for" },
  } satisfies Record<string, CoverField>;
}

export type CoverKey = keyof ReturnType<typeof fieldsOf>;

const LEGEND: readonly (readonly [mark: Filled, says: string])[] = [
  ["type", "you fill it in; the cell is shaded"],
  ["calc", "worked out: leave it alone"],
  ["either", "worked out until you type over it"],
];

/** A sheet of the workbook with what it is for. */
export type Purpose = readonly [sheet: string, purpose: string];

/** Front page of a run: who, when, rates, and how the workbook is read. */
export class Cover {
  private readonly fields: Readonly<Record<CoverKey, CoverField>>;

  constructor(
    private readonly heading: string,
    cover: CoverData,
    routeYield: string,
  ) {
    this.fields = fieldsOf(cover, routeYield);
  }

  /** Address of a figure of the cover, for a formula on any sheet. */
  at(key: CoverKey): string {
    const row = FIRST + Object.keys(this.fields).indexOf(key);
    return `${NAME}!${cellName(row, 1, "both")}`;
  }

  /** The day that dates are held against: that of the figures, today where none is typed. */
  get today(): string {
    return `IF(${this.at("asOf")}="",TODAY(),${this.at("asOf")})`;
  }

  private dayOf(key: DayKey): string {
    return key === "today" ? this.today : this.at(key);
  }

  /** A day that stands elsewhere and belongs between the enquiry and the day the run is due. */
  dayOfRun(cell: string, name?: string): DayCell {
    return {
      cell,
      ...(name === undefined ? {} : { name }),
      notBefore: [[this.at("enquired"), DAY_WORDS.enquired]],
      notAfter: [[this.at("due"), DAY_WORDS.due]],
    };
  }

  /** What is odd about a day of the cover, without an equals sign. */
  private dayRemark(key: CoverKey): string {
    const { days = {} } = this.fields[key];
    const limits = (keys: readonly DayKey[] = []) =>
      keys.map((other) => [this.dayOf(other), DAY_WORDS[other]] as const);
    const { notBefore, notAfter } = days;
    return dayCheck([{ cell: this.at(key), notBefore: limits(notBefore), notAfter: limits(notAfter) }]);
  }

  /** Formula that counts the days on the cover that cannot be. */
  get oddDays(): string {
    const days = (Object.keys(this.fields) as CoverKey[]).filter(
      (key) => this.fields[key].days !== undefined,
    );
    return days.map((key) => `(LEFT(${this.dayRemark(key)},5)="CHECK")`).join("+");
  }

  private fieldRows(): Row[] {
    return (Object.entries(this.fields) as [CoverKey, CoverField][]).map(
      ([key, { label, value, otherwise, format, remark, days }]) =>
        field(
          label,
          typed(value ?? (otherwise === undefined ? null : `=${otherwise}`), format),
          otherwise === undefined ? "type" : "either",
          days === undefined ? (remark ?? "") : this.shownRemark(key, remark ?? ""),
        ),
    );
  }

  private shownRemark(key: CoverKey, otherwise: string): string {
    const found = this.dayRemark(key);
    return `=IF(LEFT(${found},5)="CHECK",${found},${textLiteral(otherwise)})`;
  }

  /** @param checks - Formula that sums up the checks, without its equals sign. */
  model(purposes: readonly Purpose[], checks: string): SheetModel {
    const fields = this.fieldRows();
    const rows: Row[] = [
      [title(this.heading)],
      [note("One sheet per kind of fact; every fact is typed once. Headings say the unit.")],
      [],
      ...fields,
      field("Checks", worked(`=${checks}`), "calc", "counted on the sheet Checks"),
      field("Worked out by", worked("=BLADE.VERSION()"), "calc"),
      [],
      [heading("How cells are marked")],
      ...LEGEND.map(([who, says]): Row => [mark(who), words(says)]),
      [],
      [heading("Sheet"), heading("What it is for")],
      ...purposes.map(([sheet, purpose]): Row => [heading(sheet), words(purpose)]),
      [],
      [note("Estimates state their error where they stand. Try one blade before a run is hardened.")],
      [note("Nothing here is legal or safety advice: follow local codes and licensed practice.")],
    ];
    return helperSheet(NAME, rows, {
      columnWidths: [150, 340, 56, 330],
      rowHeights: { 0: 28 },
      statusColumns: [1],
      lines: [FIRST + fields.length, FIRST + fields.length],
      print: {},
    });
  }
}
