const path = require("node:path");
const { alone } = require("./build-lock.cjs");

const CACHE = path.resolve(__dirname, "../../../node_modules/.cache/blade-metallurgy");

/** Where the development build of the page stands. */
const PAGE_FOLDER = path.join(CACHE, "workbench");

function options() {
  return {
    mode: "development",
    output: PAGE_FOLDER,
    cache: {
      cacheDirectory: path.join(CACHE, "webpack-workbench"),
      buildDependencies: {
        config: [__filename, `${__dirname}/webpack.workbench.cjs`, `${__dirname}/grid-vendor.cjs`],
      },
    },
  };
}

function refuse(stats) {
  const sentences = stats.toJson({ all: false, errors: true }).errors.map(({ message }) => message);
  return new Error(`the workbench did not build:\n${sentences.join("\n\n")}`);
}

async function build() {
  const webpack = require("webpack");
  const { workbenchConfig } = require("./webpack.workbench.cjs");
  const compiler = webpack(workbenchConfig(options()));
  const stats = await new Promise((resolve, reject) => {
    compiler.run((fault, result) => (fault ? reject(fault) : resolve(result)));
  });
  await new Promise((resolve) => compiler.close(resolve));
  if (stats.hasErrors()) throw refuse(stats);
  return PAGE_FOLDER;
}

/** Builds the page in development mode with webpack's file cache, one process at a time; resolves to its folder. */
function buildWorkbench() {
  return alone(path.join(CACHE, "workbench.lock"), build);
}

module.exports = { buildWorkbench };
