const fs = require("node:fs");
const path = require("node:path");
const webpack = require("webpack");

const root = path.resolve(__dirname, "../..");

/** Packages stay outside the bundle: building stays quick, and Node loads the CommonJS form of each. */
function packageAsCommonJs({ request }, callback) {
  if (/^[./]/.test(request) || path.isAbsolute(request)) return callback();
  return callback(null, `commonjs ${request}`);
}

function configuration(entry, folder) {
  return {
    mode: "none",
    target: "node20",
    context: root,
    entry,
    output: { path: folder, filename: "bundle.cjs" },
    resolve: { extensions: [".ts", ".js", ".json"] },
    externals: [packageAsCommonJs],
    module: {
      rules: [
        {
          test: /\.ts$/,
          loader: require.resolve("ts-loader"),
          options: {
            transpileOnly: true,
            configFile: path.join(root, "tsconfig.json"),
            compilerOptions: { noEmit: false, sourceMap: false },
          },
        },
      ],
    },
    node: { __dirname: false, __filename: false },
    infrastructureLogging: { level: "none" },
  };
}

/** The project's own files that went into a build; packages are covered by the lockfile. */
function ownFiles(stats) {
  const isOwn = (file) =>
    file.startsWith(root + path.sep) && !file.includes(`${path.sep}node_modules${path.sep}`);
  const isFile = (file) => path.extname(file) !== "";
  return [...stats.compilation.fileDependencies].filter((file) => isOwn(file) && isFile(file)).sort();
}

function run(compiler) {
  return new Promise((resolve, reject) => {
    compiler.run((failure, stats) => {
      compiler.close(() => (failure ? reject(failure) : resolve(stats)));
    });
  });
}

/**
 * Bundles one TypeScript entry.
 *
 * @param {string} entry - Absolute path of the entry.
 * @param {string} cache - Folder in which a folder of its own is made for the time of the build.
 * @returns {Promise<{text: string, files: string[]}>} The bundle and the source files it was made from.
 */
async function bundleEntry(entry, cache) {
  const folder = fs.mkdtempSync(path.join(cache, "build-"));
  try {
    const stats = await run(webpack(configuration(entry, folder)));
    if (stats.hasErrors()) throw new Error(stats.toString({ all: false, errors: true }));
    return { text: fs.readFileSync(path.join(folder, "bundle.cjs"), "utf8"), files: ownFiles(stats) };
  } finally {
    fs.rmSync(folder, { recursive: true, force: true });
  }
}

module.exports = { bundleEntry };
