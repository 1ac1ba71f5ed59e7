import * as bladeBands from "../core/blade/bands";
import * as bladeChance from "../core/blade/chance";
import * as boundedMap from "../core/bounded-map";
import * as edition from "../core/edition";
import * as hardeningHeatTransfer from "../core/hardening/heat-transfer";
import * as hardeningSectionQuench from "../core/hardening/section-quench";
import * as hardeningSectionReport from "../core/hardening/section-report";
import * as mechanicsBeam from "../core/mechanics/beam";
import * as mechanicsFlex from "../core/mechanics/flex";
import * as quantityText from "../core/quantity-text";
import * as refusal from "../core/refusal";
import * as runFaultyCells from "../core/run/faulty-cells";
import * as runStarts from "../core/run/starts";
import * as shapeGrinds from "../core/shape/grinds";
import * as shapeStrips from "../core/shape/strips";
import * as sources from "../core/sources";
import * as steelDensity from "../core/steel/density";
import * as steelFind from "../core/steel/find";
import * as steelNameSuggestions from "../core/steel/name-suggestions";
import * as steelSteel from "../core/steel/steel";
import * as stockCuttingLimits from "../core/stock/cutting-limits";
import * as stockForgeLength from "../core/stock/forge-length";
import * as stockOffers from "../core/stock/offers";
import * as table from "../core/table";
import * as temperingEmbrittlement from "../core/tempering/embrittlement";
import * as temperingFits from "../core/tempering/fits";
import * as temperingHollomonJaffe from "../core/tempering/hollomon-jaffe";
import * as temperingOxideColour from "../core/tempering/oxide-colour";
import * as temperingTemperLimits from "../core/tempering/temper-limits";
import * as temperingTemperingModel from "../core/tempering/tempering-model";
import * as readingArguments from "./arguments";
import * as catalogue from "./catalogue";
import * as cells from "./cells";
import * as declare from "./declare";
import * as evaluate from "./evaluate";
import * as evidence from "./evidence";
import * as hardeningSectionArguments from "./hardening/section-arguments";
import * as measure from "./measure";
import * as metadata from "./metadata";
import * as namespace from "./namespace";
import * as quantities from "./quantities";
import * as runHeadingRow from "./run/heading-row";
import * as runPlanHeadings from "./run/plan-headings";
import * as runTreatment from "./run/treatment";
import * as shapeStationArguments from "./shape/station-arguments";
import * as topics from "./topics";

/**
 * What the pane and the maker of workbooks read of core and functions, by the path of the module. They import those
 * modules as everyone does; the build reads them from here (`manifest/for-pane.cjs`), since functions.js has run
 * before the pane and a module that two bundles import cannot be joined with the rest of either.
 */
export const forPane = {
  "core/blade/bands": bladeBands,
  "core/blade/chance": bladeChance,
  "core/bounded-map": boundedMap,
  "core/edition": edition,
  "core/hardening/heat-transfer": hardeningHeatTransfer,
  "core/hardening/section-quench": hardeningSectionQuench,
  "core/hardening/section-report": hardeningSectionReport,
  "core/mechanics/beam": mechanicsBeam,
  "core/mechanics/flex": mechanicsFlex,
  "core/quantity-text": quantityText,
  "core/refusal": refusal,
  "core/run/faulty-cells": runFaultyCells,
  "core/run/starts": runStarts,
  "core/shape/grinds": shapeGrinds,
  "core/shape/strips": shapeStrips,
  "core/sources": sources,
  "core/steel/density": steelDensity,
  "core/steel/find": steelFind,
  "core/steel/name-suggestions": steelNameSuggestions,
  "core/steel/steel": steelSteel,
  "core/stock/cutting-limits": stockCuttingLimits,
  "core/stock/forge-length": stockForgeLength,
  "core/stock/offers": stockOffers,
  "core/table": table,
  "core/tempering/embrittlement": temperingEmbrittlement,
  "core/tempering/fits": temperingFits,
  "core/tempering/hollomon-jaffe": temperingHollomonJaffe,
  "core/tempering/oxide-colour": temperingOxideColour,
  "core/tempering/temper-limits": temperingTemperLimits,
  "core/tempering/tempering-model": temperingTemperingModel,
  "functions/arguments": readingArguments,
  "functions/catalogue": catalogue,
  "functions/cells": cells,
  "functions/declare": declare,
  "functions/evaluate": evaluate,
  "functions/evidence": evidence,
  "functions/hardening/section-arguments": hardeningSectionArguments,
  "functions/measure": measure,
  "functions/metadata": metadata,
  "functions/namespace": namespace,
  "functions/quantities": quantities,
  "functions/run/heading-row": runHeadingRow,
  "functions/run/plan-headings": runPlanHeadings,
  "functions/run/treatment": runTreatment,
  "functions/shape/station-arguments": shapeStationArguments,
  "functions/topics": topics,
};
