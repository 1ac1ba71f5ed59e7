import { CONVERSION_TABLES, findConversionTable } from "../../core/hardness/conversion-tables";
import { findScale, SCALES } from "../../core/hardness/scales";

const scaleWords = SCALES.map(({ word }) => word).join(", ");

export const scaleOptions = {
  kind: "hardness scale",
  accepts: `one of ${scaleWords}`,
  words: SCALES.map(({ word }) => word),
  find: findScale,
};

export const classOptions = {
  label: "class",
  kind: "class of steel",
  help: `Class of steel: ${CONVERSION_TABLES.map(({ word }) => word).join(", ")}.`,
  accepts: `one of ${CONVERSION_TABLES.map(({ word }) => word).join(", ")}`,
  words: CONVERSION_TABLES.map(({ word }) => word),
  find: findConversionTable,
};
