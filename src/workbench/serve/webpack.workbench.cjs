const path = require("node:path");
const MiniCssExtractPlugin = require("mini-css-extract-plugin");
const { Compilation, sources } = require("webpack");
const { LicencesPlugin } = require("../../../manifest/licences.cjs");
const { engineScript, GLOBALS, VENDOR_PACKAGES, vendorScript, vendorStyle } = require("./grid-vendor.cjs");

const ROOT = path.resolve(__dirname, "../../..");

/** Adds the page and the grid's own bundles beside ours. */
class PageFiles {
  apply(compiler) {
    const page = path.join(__dirname, "../page/workbench.html");
    compiler.hooks.thisCompilation.tap("PageFiles", (compilation) => {
      compilation.fileDependencies.add(page);
      compilation.hooks.processAssets.tap(
        { name: "PageFiles", stage: Compilation.PROCESS_ASSETS_STAGE_REPORT },
        () => {
          const emit = (name, content) =>
            // They come minified; doing it again would take over a minute.
            compilation.emitAsset(name, new sources.RawSource(content), { minimized: true });
          emit("index.html", compiler.inputFileSystem.readFileSync(page));
          emit("grid-vendor.js", vendorScript());
          emit("grid-vendor.css", vendorStyle());
          emit("engine-vendor.js", engineScript());
        },
      );
    });
  }
}

/** The workbench page; `output` is the folder it is written to. */
function workbenchConfig({ mode, output, cache }) {
  return {
    name: "workbench",
    context: ROOT,
    mode,
    target: "web",
    // The page forbids evaluated code, which the development default would use.
    devtool: mode === "development" ? "source-map" : false,
    entry: {
      workbench: "./src/workbench/main.ts",
      // The worker loads the engine's packages before anything of ours that imports them.
      calculation: [
        "./src/workbench/calculation/engine-packages.ts",
        "./src/workbench/calculation/worker.ts",
      ],
    },
    output: { path: output, filename: "[name].js", chunkFilename: "[name].js", clean: true },
    resolve: { extensions: [".ts", ".js"] },
    externals: Object.fromEntries(Object.entries(GLOBALS).map(([name, global]) => [name, `var ${global}`])),
    module: {
      rules: [
        {
          test: /\.ts$/,
          exclude: /node_modules/,
          loader: "ts-loader",
          options: { transpileOnly: true, compilerOptions: { noEmit: false } },
        },
        { test: /\.css$/, use: [MiniCssExtractPlugin.loader, "css-loader"] },
      ],
    },
    plugins: [
      new MiniCssExtractPlugin({ filename: "[name].css", chunkFilename: "[name].css" }),
      new PageFiles(),
      new LicencesPlugin({ ready: VENDOR_PACKAGES }),
    ],
    cache: cache === undefined ? false : { type: "filesystem", ...cache },
    performance: { hints: false },
    infrastructureLogging: { level: "error" },
  };
}

module.exports = { workbenchConfig };
