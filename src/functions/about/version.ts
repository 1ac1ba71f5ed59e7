import manifest from "../../../package.json";
import { DATA_EDITION } from "../../core/edition";
import { scalarFunction } from "../declare";

export const VERSION = scalarFunction({
  name: "VERSION",
  summary:
    "Version of the add-in and edition of its data, so that a shared workbook can say what computed it.",
  parameters: {},
  result: { label: "version", unit: "text" },
  relations: [],
  compute: () => `Blade Metallurgy ${manifest.version}, data edition ${DATA_EDITION}`,
});
