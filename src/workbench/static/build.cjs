/**
 * The second half of `npm run build`: the workbench as files in `dist/workbench`, for any static host. Addresses are
 * relative, so that the folder may stand anywhere; after the first visit the page opens without a network.
 */
const path = require("node:path");
const webpack = require("webpack");
const { workbenchConfig } = require("../serve/webpack.workbench.cjs");
const { StaticFiles } = require("./static-files.cjs");

const FOLDER = path.resolve(__dirname, "../../../dist/workbench");

/** @param output - The folder to write to, an absolute path. */
async function buildStatic(output = FOLDER) {
  const config = workbenchConfig({ mode: "production", output });
  const compiler = webpack({ ...config, plugins: [...config.plugins, new StaticFiles()] });
  const stats = await new Promise((resolve, reject) => {
    compiler.run((fault, result) => (fault ? reject(fault) : resolve(result)));
  });
  await new Promise((resolve) => compiler.close(resolve));
  if (stats.hasErrors()) throw new Error(stats.toString("errors-only"));
  return output;
}

module.exports = { buildStatic };

if (require.main === module) {
  buildStatic().catch((fault) => {
    console.error(fault instanceof Error ? fault.message : fault);
    process.exit(1);
  });
}
