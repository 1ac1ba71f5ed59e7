const vm = require("node:vm");
const Ajv = require("ajv-draft-04");
const { Compilation, sources } = require("webpack");

const SCHEMA = "@microsoft/app-manifest/build/json-schemas/teams/v1.29/MicrosoftTeams.schema.json";
const DEFINITION = "teams#/definitions/extensionCustomFunctions";

/**
 * Runs a built functions bundle where there is nothing but the language itself, as Excel's
 * JavaScript-only runtime would: a bundle that reaches for a document or for storage fails here.
 *
 * @param {string} code - The bundle.
 * @returns {{ ids: string[], namespace: string, metadata: object }} What it registered and how it describes itself.
 */
function readBundle(code) {
  const ids = [];
  const context = vm.createContext({ CustomFunctions: { associate: (id) => ids.push(id) } });
  vm.runInContext(code, context, { filename: "functions.js" });
  const [namespace, json] = vm.runInContext(
    "[BladeMetallurgy.NAMESPACE, JSON.stringify(BladeMetallurgy.metadata())]",
    context,
  );
  return { ids, namespace, metadata: JSON.parse(json) };
}

let validateDefinition;

/** Faults of a functions.json by the published schema, as sentences; empty where there are none. */
function schemaFaults(metadata, namespace) {
  if (validateDefinition === undefined) {
    const ajv = new Ajv({ strict: false, validateFormats: false, allErrors: true });
    ajv.addSchema(require(SCHEMA), "teams");
    validateDefinition = ajv.getSchema(DEFINITION);
  }
  if (validateDefinition({ ...metadata, namespace: { id: namespace, name: namespace } })) return [];
  return validateDefinition.errors.map(({ instancePath, message }) => `${instancePath} ${message}`);
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
  constructor({ host }) {
    this.host = host;
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
    const { ids, metadata, namespace } = readBundle(
      String(compilation.getAsset("functions.js").source.source()),
    );
    const described = withHelp(metadata, this.host);
    const faults = [...registrationFaults(ids, described), ...schemaFaults(described, namespace)];
    for (const fault of faults) compilation.errors.push(new WebpackError(`functions.json: ${fault}`));
    compilation.emitAsset("functions.json", new sources.RawSource(`${JSON.stringify(described, null, 1)}\n`));
  }
}

module.exports = { FunctionMetadataPlugin, readBundle, schemaFaults };
