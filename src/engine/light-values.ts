import { ArrayValueObject, NumberValueObject, StringValueObject } from "@univerjs/engine-formula";

/**
 * Values of the engine made without ceremony. As published it defines each field of each number and text that passes
 * through a formula as a property of its own: a tenth of the time of a calculation, and most of what is thrown away.
 */

type Fields = Record<string, unknown>;
type Maker = (this: Fields, raw: unknown) => void;

interface Made {
  new (raw: unknown): unknown;
}

/** A constructor of the same kind of values that sets plain fields. */
function maker(kind: { readonly prototype: object }, fill: Maker): Made {
  fill.prototype = kind.prototype;
  return fill as unknown as Made;
}

const NUMBER = maker(NumberValueObject, function (raw) {
  this.pattern = "";
  this._rawValue = raw;
  this._customData = undefined;
  this._value = Number(raw);
});

const TEXT = maker(StringValueObject, function (raw) {
  this.pattern = "";
  this._rawValue = raw;
  this._customData = undefined;
  this._value = raw;
  this._isHyperlink = false;
  this._hyperlinkUrl = "";
  this._isImage = false;
  this._imageInfo = undefined;
});

const LIST = maker(ArrayValueObject, function (raw) {
  this.pattern = "";
  this._rawValue = "";
  this._customData = undefined;
  this._values = [];
  this._rowCount = -1;
  this._columnCount = -1;
  this._unitId = "";
  this._sheetId = "";
  this._currentRow = -1;
  this._currentColumn = -1;
  this._sliceCache = new Map();
  this._flattenCache = undefined;
  this._defaultValue = null;
  this._flattenPosition = undefined;
  this._values = (this._formatValue as (raw: unknown) => unknown).call(this, raw);
});

/** Whether a value made so has the very fields of one that the engine makes: another version of it may have others. */
function hasFieldsOf(made: unknown, published: unknown): boolean {
  return Object.keys(made as object).join() === Object.keys(published as object).join();
}

const SAMPLE = {
  calculateValueList: [[]],
  rowCount: 1,
  columnCount: 0,
  unitId: "",
  sheetId: "",
  row: -1,
  column: -1,
};

let isLight = false;

/** Makes numbers, texts and lists of the whole engine so from now on. */
export function makeValuesLight(): void {
  if (isLight) return;
  isLight = true;
  lightNumbers();
  lightTexts();
  lightLists();
}

function lightNumbers(): void {
  if (!hasFieldsOf(new NUMBER(1), NumberValueObject.create(1))) return;
  NumberValueObject.create = (value, pattern = "") => {
    const made = new NUMBER(value) as NumberValueObject;
    if (pattern) made.setPattern(pattern);
    return made;
  };
}

function lightTexts(): void {
  const create = StringValueObject.create.bind(StringValueObject);
  if (!hasFieldsOf(new TEXT("a"), create("a"))) return;
  StringValueObject.create = (value, options) =>
    options === undefined ? (new TEXT(value) as StringValueObject) : create(value, options);
}

function lightLists(): void {
  const create = ArrayValueObject.create.bind(ArrayValueObject);
  if (!hasFieldsOf(new LIST(SAMPLE), create(SAMPLE))) return;
  ArrayValueObject.create = (raw) =>
    typeof raw === "string" ? create(raw) : (new LIST(raw) as ArrayValueObject);
}
