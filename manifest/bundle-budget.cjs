const { gzipSync } = require("node:zlib");
const { Compilation } = require("webpack");

const kilobytes = (bytes) => `${(bytes / 1000).toFixed(1)} kB`;

/** Raw and gzip size of the files of a compilation whose names fit. */
function sizeOf(compilation, fits) {
  const files = compilation.getAssets().filter(({ name }) => fits(name));
  const contents = files.map(({ source }) => source.buffer());
  return {
    raw: contents.reduce((sum, content) => sum + content.length, 0),
    gzip: contents.reduce((sum, content) => sum + gzipSync(content, { level: 9 }).length, 0),
  };
}

/**
 * Prints what each part weighs and fails the build where one is heavier than it may be: the
 * functions load with every workbook that holds one of them.
 */
class BundleBudgetPlugin {
  constructor(parts) {
    this.parts = parts;
  }

  apply(compiler) {
    const name = "BundleBudgetPlugin";
    compiler.hooks.thisCompilation.tap(name, (compilation) => {
      const stage = Compilation.PROCESS_ASSETS_STAGE_REPORT;
      compilation.hooks.processAssets.tap({ name, stage }, () => this.weigh(compilation));
    });
  }

  weigh(compilation) {
    const { WebpackError } = compilation.compiler.webpack;
    for (const { title, fits, gzipLimit } of this.parts) {
      const { raw, gzip } = sizeOf(compilation, fits);
      const line = `${title}: ${kilobytes(raw)}, ${kilobytes(gzip)} gzip of ${kilobytes(gzipLimit)}`;
      if (gzip > gzipLimit) compilation.errors.push(new WebpackError(`over budget: ${line}`));
      console.log(line);
    }
  }
}

module.exports = { BundleBudgetPlugin };
