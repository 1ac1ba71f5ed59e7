const { resolve } = require("node:path");
const { DefinePlugin } = require("webpack");
const CopyWebpackPlugin = require("copy-webpack-plugin");
const HtmlWebpackPlugin = require("html-webpack-plugin");
const MiniCssExtractPlugin = require("mini-css-extract-plugin");
const { BundleBudgetPlugin } = require("./manifest/bundle-budget.cjs");
const { throughTheFace } = require("./manifest/for-pane.cjs");
const { FunctionMetadataPlugin } = require("./manifest/function-metadata.cjs");
const { HelpPagesPlugin } = require("./manifest/help-pages.cjs");
const { HostingKitPlugin } = require("./manifest/hosting-kit.cjs");
const { LicencesPlugin } = require("./manifest/licences.cjs");
const { UnifiedManifestPlugin } = require("./manifest/unified.cjs");
const { version } = require("./package.json");
const { DEVELOPMENT, DEVELOPMENT_HOST, manifestFor, productionHost } = require("./manifest/hosting.cjs");

const VENDOR_OFFICE = "https://appsforoffice.microsoft.com/lib/1/hosted/office.js";
const NPM_OFFICE = "node_modules/@microsoft/office-js/dist";

/** The files of the npm copy of office.js that Excel on Windows, Mac and the web ask for. */
const NPM_OFFICE_FILES = [
  "office.js",
  "o15apptofilemappingtable.js",
  "excel-{win32-16.01,mac-16.00,web-16.00}.js",
  "en-us/*_strings.js",
];

/** Fetched when a share copy or a planning workbook is first asked for: the formula engine and the file formats. */
const isFileMaker = (name) => /^page-workbook-files\./.test(name);

/** Worked cases of every function, addresses of every source: read by whoever opens these two pages. */
const isReference = (name) => /^page-(functions-list|about)\./.test(name);

/** The form for arguments: fetched when a function is to be filled in. */
const isForm = (name) => /^page-argument-form\./.test(name);

const isPaneFile = (name) =>
  /^(taskpane|page-).*\.(js|css)$/.test(name) && !isFileMaker(name) && !isReference(name) && !isForm(name);

/** What pages share stands once; the maker of workbooks keeps its parts to itself. */
const SHARED_BY_PAGES = {
  chunks: (chunk) => !chunk.canBeInitial() && chunk.name !== "workbook-files",
  minSize: 1500,
};

function scripts() {
  const options = { transpileOnly: true, compilerOptions: { noEmit: false, target: "ES2020" } };
  return { test: /\.ts$/, loader: "ts-loader", options };
}

/** Parts of a table that only a reader of the file needs. */
const FOR_READERS = ["note", "seen", "quality", "errata"];

/** Licences that ask to be named where the data is shown. */
const isOpenLicence = ({ licence }) => /CC|LGPL|MIT|Apache/.test(licence);

/** Tables of the literature without what no code reads: the functions load with every workbook. */
function tables() {
  const shortened = (text) => {
    const table = JSON.parse(text);
    for (const part of FOR_READERS) delete table[part];
    return table;
  };
  // Rows are read by place: only their number counts, but for the hardness tables, which name their scales. The title
  // is for whoever reads the file, and for the complaint about a slip in it, which the tests find.
  const counted = (text) => {
    const { title, ...table } = shortened(text);
    return "rows" in table && "columns" in table
      ? { ...table, columns: Object.keys(table.columns).map(() => 0) }
      : table;
  };
  // Of what a source may be used for the page about names the open licences; the rest is for whoever changes the tables.
  const cited = (text) => {
    const sources = JSON.parse(text);
    for (const source of Object.values(sources)) if (!isOpenLicence(source)) delete source.licence;
    return sources;
  };
  const rule = (test, parse) => ({ test, type: "json", parser: { parse } });
  return [
    rule(/src[\\/]data[\\/](?:hardness|inspection)[\\/].*\.json$/, shortened),
    rule(/src[\\/]data[\\/]sources[\\/](?!addresses).*\.json$/, cited),
    rule(/src[\\/]data[\\/](?!sources|hardness|inspection)\w+[\\/].*\.json$/, counted),
  ];
}

function styles() {
  return {
    test: /\.css$/,
    resourceQuery: { not: [/raw/] },
    use: [MiniCssExtractPlugin.loader, "css-loader"],
  };
}

function contentSecurityPolicy(isVendorOffice) {
  const office = isVendorOffice ? ` ${new URL(VENDOR_OFFICE).origin}` : "";
  return [
    "default-src 'none'",
    `script-src 'self'${office}`,
    "style-src 'self'",
    "img-src 'self' data:",
    "connect-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");
}

function page(isVendorOffice) {
  return new HtmlWebpackPlugin({
    template: "src/taskpane/taskpane.html",
    filename: "taskpane.html",
    chunks: ["functions", "taskpane"],
    chunksSortMode: "manual",
    // The template places the scripts itself: the functions are registered before the body is read.
    inject: false,
    hash: true,
    officeScript: isVendorOffice ? VENDOR_OFFICE : "office/office.js",
    policy: contentSecurityPolicy(isVendorOffice),
  });
}

/** Asks the host for every file of the build and says what is missing; knows nothing of Excel. */
function checkPage() {
  return new HtmlWebpackPlugin({
    template: "src/taskpane/hosting/check.html",
    filename: "check.html",
    chunks: ["check"],
    inject: false,
    hash: true,
    policy: contentSecurityPolicy(false),
  });
}

function copies(host, isVendorOffice) {
  const transform = (content) => manifestFor(String(content), host);
  const manifest = { from: "manifest/manifest.xml", to: "manifest.xml", transform };
  const icons = { from: "assets/icon-{16,32,64,80}.png", to: "[path][name][ext]" };
  const info = { minimized: true };
  const office = NPM_OFFICE_FILES.map((from) => ({ from, to: "office", context: NPM_OFFICE, info }));
  return new CopyWebpackPlugin({ patterns: [manifest, icons, ...(isVendorOffice ? [] : office)] });
}

/** The namespace of the manifest of development: `=BLADEDEV.CARBON("1095")`. */
function developmentNames() {
  return new DefinePlugin({ DEVELOPMENT_NAMESPACE: JSON.stringify(DEVELOPMENT.namespace) });
}

/** Excel on Windows and Mac wants certificates that the system trusts; elsewhere there is only a browser to please. */
async function certificates() {
  if (process.platform === "linux") return { type: "https" };
  const { ca, key, cert } = await require("office-addin-dev-certs").getHttpsServerOptions();
  return { type: "https", options: { ca, key, cert } };
}

async function developmentServer() {
  return {
    server: await certificates(),
    port: 3000,
    // A client in the page would put a document's code into the functions bundle: reload by hand.
    client: false,
    hot: false,
    liveReload: false,
    headers: { "Access-Control-Allow-Origin": "*" },
    static: false,
  };
}

/**
 * Pages and bundles of the add-in.
 *
 * @param env - `office=npm` takes office.js from the npm copy in production mode too, `out=FOLDER`
 *   builds elsewhere than `dist`, `errors=off` keeps error cells from the functions (for Excel LTSC 2021), `quiet` weighs nothing, `host=ADDRESS` is where the pages will be served from, as is `ADDIN_HOST`.
 */
module.exports = async (env = {}, argv = {}) => {
  const isProduction = argv.mode === "production";
  const isServed = env.WEBPACK_SERVE === true;
  const isVendorOffice = isProduction && env.office !== "npm";
  const host = isProduction ? productionHost(env.host ?? process.env.ADDIN_HOST) : DEVELOPMENT_HOST;
  return {
    mode: isProduction ? "production" : "development",
    context: __dirname,
    devtool: isProduction ? false : "source-map",
    target: ["web", "es2020"],
    entry: {
      functions: { import: "./src/host/register.ts", library: { name: "BladeMetallurgy", type: "var" } },
      taskpane: { import: "./src/taskpane/index.ts", dependOn: "functions" },
      check: "./src/taskpane/hosting/check.ts",
    },
    output: {
      path: resolve(__dirname, env.out ?? "dist"),
      filename: "[name].js",
      chunkFilename: "page-[name].[contenthash:8].js",
      publicPath: "",
      globalObject: "globalThis",
      // The library and the workbench are built on their own.
      clean: { keep: /^(library|workbench)\// },
    },
    resolve: { extensions: [".ts", ".js"] },
    module: { rules: [scripts(), ...tables(), styles(), { resourceQuery: /raw/, type: "asset/source" }] },
    plugins: [
      new MiniCssExtractPlugin({ filename: "[name].css", chunkFilename: "page-[name].[contenthash:8].css" }),
      page(isVendorOffice),
      checkPage(),
      copies(host, isVendorOffice),
      new FunctionMetadataPlugin({ host, errors: env.errors !== "off" }),
      ...(isProduction ? [] : [developmentNames()]),
      new HelpPagesPlugin({ entry: "./src/taskpane/help/site.ts" }),
      new LicencesPlugin(),
      new UnifiedManifestPlugin({ host }),
      new HostingKitPlugin({ host, version }),
      ...(isProduction && env.quiet === undefined ? [budget()] : []),
    ],
    externals: [throughTheFace()],
    optimization: { splitChunks: SHARED_BY_PAGES },
    performance: { hints: false },
    stats: "errors-warnings",
    ...(isServed ? { devServer: await developmentServer() } : {}),
  };
};

/**
 * The functions load with every workbook that holds one of them. 150 kB held 95 functions. Mechanics, stainless and
 * air-hardening steels, the story of a blade, the choice of a steel and the recipe of a line brought them to 187.8 kB;
 * read by the pane through one face they came to 182.3 kB, and with the functions added since to 189.5 kB;
 * TRADE_OFF and CLADDING add about 3 kB. BEST_OFFER and OFFERS_COMPARED, the story of a blade in every plan and the
 * number formats brought them to 197.5 kB; cells at fault that spoil their own part of a line only, long functions in
 * parts and the steels sold widely, to 202.3 kB; checks of lengths, counts and densities, the card of STEEL and the
 * reasons of a temper, to 205.2 kB; what each room weighs stands in DEVELOPERS.md. The pane came from 50 to 60.6 kB
 * with the pages Which steel and bending, to 66.5 kB with Start, Health, the buttons of the ribbon and the reader's own
 * separators, and to 73.7 kB with curves that show bands and coupons; the form for arguments (2.9 kB) is fetched when a
 * function is to be filled in.
 */
function budget() {
  return new BundleBudgetPlugin([
    { title: "functions", fits: (name) => name === "functions.js", gzipLimit: 208_000 },
    { title: "task pane", fits: isPaneFile, gzipLimit: 76_000 },
    { title: "argument form, on demand", fits: isForm, gzipLimit: 6_000 },
    { title: "list of functions and sources, on demand", fits: isReference, gzipLimit: 25_000 },
    { title: "maker of workbooks, on demand", fits: isFileMaker, gzipLimit: 500_000 },
  ]);
}
