import addresses from "../data/sources/addresses.json";
import type { SourceKey } from "./sources";

/**
 * Where a source was read; absent where it was recalled or is our own. Apart from the sources, since
 * only the list of sources shows it and the functions load with every workbook.
 */
export const SOURCE_ADDRESSES: Readonly<Partial<Record<SourceKey, string>>> = addresses;
