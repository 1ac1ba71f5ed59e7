import { FORMULA_REF_TO_ARRAY_CACHE } from "@univerjs/engine-formula";

/** The engine keeps this many parsed formulas as published: fewer than a plan of 60 lines has. */
const PUBLISHED_LIMIT = 5000;
const LIMIT = 20_000;

/** The engine's class of caches; all of them share one prototype, and only one of them is exported. */
interface Cache {
  _cache: { limit: number; get(key: string): unknown; set(key: string, node: unknown): unknown };
  _hash(text: string): string;
  set(text: string, node: unknown): void;
}

let isRepaired = false;

/**
 * Lets the engine find parsed formulas by their text. As published, it works out a digest of every formula longer
 * than 64 characters at each look, which takes longer than the look itself and may take one formula for another;
 * and it forgets formulas while it still works on the same workbook.
 */
export function repairFormulaCache(): void {
  if (isRepaired) return;
  isRepaired = true;
  const prototype = Object.getPrototypeOf(FORMULA_REF_TO_ARRAY_CACHE) as Cache;
  prototype._hash = (text) => text;
  prototype.set = function (text, node) {
    if (this._cache.limit === PUBLISHED_LIMIT) this._cache.limit = LIMIT;
    this._cache.set(text, node);
  };
}
