/** The arrows of src, as DEVELOPERS.md lists them. */
const layer = (name, allowed, comment) => ({
  name: `${name}-arrows`,
  comment,
  severity: "error",
  from: { path: `^src/${name}/` },
  to: { path: "^src/", pathNot: `^src/(${[name, ...allowed].map((part) => (/\.(json|ts)$/.test(part) ? part : `${part}/`)).join("|")})` },
});

const only = (packages, folders, comment) => ({
  name: `only-${folders.join("-")}`,
  comment,
  severity: "error",
  from: { path: "^src/", pathNot: `^src/(${folders.join("|")})/` },
  to: { path: `^node_modules/(${packages})/` },
});

module.exports = {
  forbidden: [
    layer("data", [], "tables import nothing"),
    layer("core", ["data"], "core is pure"),
    layer("functions", ["core"], "declarations know core only"),
    layer("formula", ["core", "functions/namespace.ts"], "the text of formulas; our functions are known by their namespace alone"),
    layer("host", ["formula", "functions", "core"], "the only code that names Office or Excel"),
    layer(
      "taskpane",
      ["formula", "functions", "core", "host", "data/run/cautions.json", "workbook/made-files.ts"],
      "the pane talks through the host port",
    ),
    {
      name: "workbooks-on-demand",
      comment: "only Excel's pane makes workbooks by itself, and fetches what it takes when it is asked",
      severity: "error",
      from: { path: "^src/taskpane/", pathNot: "^src/taskpane/excel-files\\.ts$" },
      to: { path: "^src/workbook/" },
    },
    layer("engine", ["formula", "functions", "core"], "the formula engine without a screen"),
    layer("workbook", ["formula", "functions", "core", "engine", "data/run/cautions.json"], "workbooks"),
    layer("workbench", ["formula", "engine", "taskpane", "workbook", "host", "functions", "core"], "the page that needs no Excel"),
    layer("cli", ["formula", "engine", "workbook", "functions", "core"], "the command line"),
    only("@univerjs", ["engine", "workbench"], "Univer is named in two places"),
    {
      name: "core-and-functions-stand-alone",
      comment: "no package and no Node module in core and functions, except the version in package.json",
      severity: "error",
      from: { path: "^src/(core|functions|data)/" },
      to: { pathNot: "^(src/|package\\.json$)" },
    },
    { name: "no-cycles", severity: "error", from: {}, to: { circular: true } },
    {
      name: "no-unlisted-package",
      severity: "error",
      from: { path: "^src/" },
      to: { dependencyTypes: ["npm-no-pkg", "npm-unknown", "undetermined"] },
    },
    { name: "resolvable", severity: "error", from: {}, to: { couldNotResolve: true } },
  ],
  options: {
    doNotFollow: { path: "node_modules" },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.json" },
    enhancedResolveOptions: {
      exportsFields: ["exports"],
      conditionNames: ["import", "require", "node", "default", "types"],
      extensions: [".ts", ".js", ".cjs", ".json", ".css"],
    },
  },
};
