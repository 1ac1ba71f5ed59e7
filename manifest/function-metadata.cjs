const vm = require("node:vm");
const Ajv = require("ajv-draft-04");
const { Compilation, sources } = require("webpack");

const SCHEMA = "@microsoft/app-manifest/build/json-schemas/teams/v1.29/MicrosoftTeams.schema.json";

/** The key that lets a function see the errors in its cells. */
const ERRORS = "allowErrorForDataTypeAny";

const OPTIONS = [
  "cancelable",
  "capturesCallingObject",
  "excludeFromAutoComplete",
  "linkedEntityLoadService",
  "requiresAddress",
  "requiresParameterAddresses",
  "requiresStreamAddress",
  "requiresStreamParameterAddresses",
  "stream",
  "volatile",
];

/**
 * The schema of a functions.json. The only published one that ships in a package is that of the unified manifest, which
 * describes the same functions in the manifest itself: this is its definition with what the vendor's "Metadata
 * reference" (article "Manually create JSON metadata for custom functions", 2025-10-27) gives a file of its own: the key
 * for errors, and the options of a function together under `options`. Namespace and address stand in the manifest.
 */
function functionsSchema() {
  const { definitions } = structuredClone(require(SCHEMA));
  const { extensionCustomFunctions: file, extensionFunction: fn } = definitions;
  const { namespace: _namespace, metadataUrl: _address, ...keys } = file.properties;
  const flags = Object.fromEntries(OPTIONS.map((name) => [name, { type: "boolean" }]));
  const own = Object.entries(fn.properties).filter(([name]) => !OPTIONS.includes(name));
  definitions.extensionFunction = {
    ...fn,
    properties: {
      ...Object.fromEntries(own),
      options: { type: "object", properties: flags, additionalProperties: false },
    },
    required: ["id", "name", "parameters", "result"],
    additionalProperties: false,
  };
  return {
    type: "object",
    definitions,
    properties: { ...keys, [ERRORS]: { type: "boolean" } },
    required: ["functions"],
    additionalProperties: false,
  };
}

/**
 * Runs a built functions bundle where there is nothing but the language itself, as Excel's
 * JavaScript-only runtime would: a bundle that reaches for a document or for storage fails here.
 *
 * @param {string} code - The bundle.
 * @returns {{ ids: string[], metadata: object }} What it registered and how it describes itself.
 */
function readBundle(code) {
  const ids = [];
  const context = vm.createContext({ CustomFunctions: { associate: (id) => ids.push(id) } });
  vm.runInContext(code, context, { filename: "functions.js" });
  const json = vm.runInContext("JSON.stringify(BladeMetallurgy.metadata())", context);
  return { ids, metadata: JSON.parse(json) };
}

let validate;

/** Faults of a functions.json by its schema, and enums that lead nowhere, as sentences; empty where there are none. */
function schemaFaults(metadata) {
  if (validate === undefined) {
    const ajv = new Ajv({ strict: false, validateFormats: false, allErrors: true });
    validate = ajv.compile(functionsSchema());
  }
  if (validate(metadata)) return enumFaults(metadata);
  return validate.errors.map(({ instancePath, message }) => `${instancePath} ${message}`);
}

function enumFaults({ enums = [], functions }) {
  const defined = enums.map(({ id }) => id);
  const used = new Set(functions.flatMap(({ parameters }) => parameters.flatMap((given) => given.customEnumId ?? [])));
  return [
    ...defined.filter((id, at) => defined.indexOf(id) !== at).map((id) => `enum ${id} is defined twice`),
    ...defined.filter((id) => !used.has(id)).map((id) => `enum ${id} is used by no parameter`),
    ...[...used].filter((id) => !defined.includes(id)).map((id) => `enum ${id} is used and not defined`),
  ];
}

/** Faults between what the bundle registers and what it describes. */
function registrationFaults(ids, metadata) {
  const described = metadata.functions.map(({ id }) => id);
  const missing = described.filter((id) => !ids.includes(id));
  const extra = ids.filter((id) => !described.includes(id));
  return [
    ...missing.map((id) => `${id} is described but not registered`),
    ...extra.map((id) => `${id} is registered but not described`),
    ...described.filter((id, at) => described.indexOf(id) !== at).map((id) => `${id} is declared twice`),
  ];
}

/** For Excel LTSC 2021, which the vendor saw crash where both keys are set (office-js issue 4385, 2024). */
function withoutErrors({ [ERRORS]: _errors, ...metadata }) {
  return metadata;
}

/** Each function's help opens the page that the build makes of its declaration. */
function withHelp(metadata, host) {
  const helped = (fn) => ({ ...fn, helpUrl: `${host}/assets/help/${fn.id}.html` });
  return { ...metadata, functions: metadata.functions.map(helped) };
}

/**
 * Writes functions.json by asking the built functions bundle, and fails the build where the
 * published schema refuses it or the bundle registers anything else.
 */
class FunctionMetadataPlugin {
  constructor({ host, errors }) {
    this.host = host;
    this.errors = errors;
  }

  apply(compiler) {
    const name = "FunctionMetadataPlugin";
    const stage = Compilation.PROCESS_ASSETS_STAGE_OPTIMIZE_TRANSFER;
    compiler.hooks.thisCompilation.tap(name, (compilation) => {
      compilation.hooks.processAssets.tap({ name, stage }, () => {
        if (compilation.errors.length === 0) this.write(compilation);
      });
    });
  }

  write(compilation) {
    const { WebpackError } = compilation.compiler.webpack;
    const { ids, metadata } = readBundle(String(compilation.getAsset("functions.js").source.source()));
    const described = withHelp(this.errors ? metadata : withoutErrors(metadata), this.host);
    const faults = [...registrationFaults(ids, described), ...schemaFaults(described)];
    for (const fault of faults) compilation.errors.push(new WebpackError(`functions.json: ${fault}`));
    compilation.emitAsset("functions.json", new sources.RawSource(`${JSON.stringify(described, null, 1)}\n`));
  }
}

module.exports = { FunctionMetadataPlugin, readBundle, schemaFaults };
