import { fromRoot } from "./from-root";

const Ajv = fromRoot("ajv-draft-04");
const SCHEMA = "@microsoft/app-manifest/build/json-schemas/teams/v1.29/MicrosoftTeams.schema.json";

const { unifiedManifest }: { unifiedManifest: (xml: string) => object } = fromRoot("./manifest/unified.cjs");

interface Fault {
  readonly instancePath: string;
  readonly message?: string;
}

/** Faults of a unified manifest by the published schema, as sentences. */
export function schemaFaultsOf(manifest: unknown): string[] {
  const validate = new Ajv({ strict: false, validateFormats: false, allErrors: true }).compile(
    fromRoot(SCHEMA),
  );
  if (validate(manifest)) return [];
  return (validate.errors as Fault[]).map(({ instancePath, message }) => `${instancePath} ${message}`);
}

/** Faults of the unified manifest that is made from an XML manifest. */
export function unifiedFaults(xml: string): string[] {
  return schemaFaultsOf(unifiedManifest(xml));
}
