import { catalogue, NAMESPACE } from "../functions/catalogue";
import { forPane } from "../functions/for-pane";
import { metadataOf } from "../functions/metadata";
import { customFunction } from "./custom-function";

/*
 * Entry of functions.js. It must run where there is neither a document nor storage, and must have
 * registered everything by the time it ends: Excel may be waiting to recalculate a workbook.
 */
if (typeof CustomFunctions !== "undefined") {
  for (const fn of catalogue) CustomFunctions.associate(fn.name, customFunction(fn));
}

export { forPane, NAMESPACE };

/** The content of functions.json, asked for by the build so that it describes exactly this bundle. */
export const metadata = () => metadataOf(catalogue);
