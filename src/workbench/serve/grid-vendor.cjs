/**
 * The grid's browser bundles, taken from its packages as they are. They come minified and register
 * one global a package, so nothing of their 11 MB has to be compiled: the page is ready in seconds.
 */
const { readFileSync } = require("node:fs");

const PRESETS = ["core", "conditional-formatting", "data-validation", "table"];

const packaged = (name, file = "index.js") => `@univerjs/${name}/lib/umd/${file}`;

/** In the order of their dependencies. */
const BEFORE_SHIM = ["react/umd/react.production.min.js", "react-dom/umd/react-dom.production.min.js"];
const RXJS = "rxjs/dist/bundles/rxjs.umd.min.js";
const AFTER_SHIM = [
  "@wendellhu/redi/dist/umd/index.js",
  "@wendellhu/redi/dist/umd/react-bindings/index.js",
  packaged("protocol"),
  packaged("themes"),
  packaged("core"),
  packaged("core", "facade.js"),
  packaged("telemetry"),
  packaged("rpc"),
  packaged("engine-render"),
  packaged("engine-formula"),
  packaged("engine-formula", "facade.js"),
  packaged("network"),
  packaged("network", "facade.js"),
  packaged("drawing"),
  packaged("preset-sheets-core"),
  packaged("preset-sheets-conditional-formatting"),
  packaged("preset-sheets-data-validation"),
  packaged("sheets-sort"),
  packaged("sheets-sort", "facade.js"),
  packaged("preset-sheets-table"),
  ...PRESETS.map((preset) => packaged(`preset-sheets-${preset}`, "locales/en-US.js")),
];

/** The browser bundle of React 18 lacks the JSX entry that the grid's bundles take from the same global. */
const JSX_SHIM = `(function (react) {
  react.jsx = react.jsxs = function (type, props, key) {
    return react.createElement(type, key === undefined ? props : Object.assign({}, props, { key: key }));
  };
})(React);`;

/**
 * Lets what gathers values for a time rest while none come. As published it sets a timer anew sixty times a second for
 * as long as the page is open, and the grid has five of them: a third of the time of a page at rest, and of an edit.
 */
function gatherWhenNeeded(rxjs) {
  const published = rxjs.bufferTime;
  const gathered = (source, milliseconds) => (subscriber) => {
    let [values, timer] = [[], undefined];
    const give = () => {
      const given = values;
      [values, timer] = [[], undefined];
      subscriber.next(given);
    };
    const inner = source.subscribe({
      next(value) {
        values.push(value);
        timer ??= setTimeout(give, milliseconds);
      },
      error: (fault) => subscriber.error(fault),
      complete() {
        give();
        subscriber.complete();
      },
    });
    return () => {
      clearTimeout(timer);
      inner.unsubscribe();
    };
  };
  const bufferTime = (...given) =>
    given.length === 1 ? (source) => new rxjs.Observable(gathered(source, given[0])) : published(...given);
  rxjs.bufferTime = bufferTime;
  // Some packages of the grid take it from here; the published list cannot be changed.
  rxjs.operators = { ...rxjs.operators, bufferTime };
}

const PACKAGES = `${__dirname}/../../../node_modules`;
const read = (file) =>
  readFileSync(`${PACKAGES}/${file}`, "utf8").replace(/^\/\/# sourceMappingURL=.*$/gm, "");

/** One script that defines the grid's globals. */
function vendorScript() {
  const gathering = `(${gatherWhenNeeded})(rxjs);`;
  return [...BEFORE_SHIM.map(read), JSX_SHIM, read(RXJS), gathering, ...AFTER_SHIM.map(read)].join("\n;\n");
}

/** Of those, what the formula engine needs without a screen. */
const ENGINE = [
  RXJS,
  "@wendellhu/redi/dist/umd/index.js",
  ...["protocol", "themes", "core", "rpc", "engine-formula"].map((name) => packaged(name)),
];

/** One script that defines the globals of the formula engine in a worker. */
const engineScript = () => ENGINE.map(read).join("\n;\n");

/** The grid's style sheets. */
function vendorStyle() {
  return PRESETS.map((preset) => read(`@univerjs/preset-sheets-${preset}/lib/index.css`)).join("\n");
}

/** The packages those files come from, for their licences. */
const VENDOR_PACKAGES = [...new Set([...BEFORE_SHIM, ...AFTER_SHIM].map(packageName))];

function packageName(file) {
  return file
    .split("/")
    .slice(0, file.startsWith("@") ? 2 : 1)
    .join("/");
}

/**
 * Which global stands for which import. As modules, presets pass on what they are made of; their browser bundles
 * leave that in globals of their own.
 */
const GLOBALS = {
  react: "React",
  "@univerjs/core": "UniverCore",
  "@univerjs/core/facade": "UniverCoreFacade",
  "@univerjs/engine-formula": "UniverEngineFormula",
  "@univerjs/engine-render": "UniverEngineRender",
  "@univerjs/sheets": "UniverSheets",
  "@univerjs/sheets-formula": "UniverSheetsFormula",
  "@univerjs/preset-sheets-core":
    "Object.assign({}, UniverEngineRender, UniverUi, UniverDocsUi, UniverSheetsUi, UniverPresetSheetsCore)",
  "@univerjs/preset-sheets-core/locales/en-US": "UniverPresetSheetsCoreEnUS",
  "@univerjs/preset-sheets-conditional-formatting":
    "Object.assign({}, UniverSheetsConditionalFormatting, UniverPresetSheetsConditionalFormatting)",
  "@univerjs/preset-sheets-conditional-formatting/locales/en-US":
    "UniverPresetSheetsConditionalFormattingEnUS",
  "@univerjs/preset-sheets-data-validation":
    "Object.assign({}, UniverSheetsDataValidation, UniverPresetSheetsDataValidation)",
  "@univerjs/preset-sheets-data-validation/locales/en-US": "UniverPresetSheetsDataValidationEnUS",
  "@univerjs/preset-sheets-table": "UniverPresetSheetsTable",
  "@univerjs/preset-sheets-table/locales/en-US": "UniverPresetSheetsTableEnUS",
};

module.exports = { engineScript, GLOBALS, gatherWhenNeeded, VENDOR_PACKAGES, vendorScript, vendorStyle };
