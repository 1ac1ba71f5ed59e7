const { readdirSync, readFileSync } = require("node:fs");
const { join } = require("node:path");
const vm = require("node:vm");
const { Compilation, EntryPlugin, library, sources } = require("webpack");

const BUNDLE = "help-pages.js";

/** Pictures that the guide shows, taken by `npm run pictures`. */
const PICTURES = "assets/pictures/guide";

/** What the compiled site answers where there is nothing but the language itself: text by file name. */
function filesOf(code) {
  const context = vm.createContext({});
  vm.runInContext(code, context, { filename: BUNDLE });
  return JSON.parse(vm.runInContext("JSON.stringify(HelpPages.helpFiles())", context));
}

/**
 * Makes the help folder from the declarations. Its code is compiled apart, because an entry of its own would keep
 * alive, in the functions bundle, all that only the pages use.
 */
class HelpPagesPlugin {
  constructor({ entry }) {
    this.entry = entry;
  }

  apply(compiler) {
    const name = "HelpPagesPlugin";
    const stage = Compilation.PROCESS_ASSETS_STAGE_ADDITIONS;
    compiler.hooks.make.tapPromise(name, async (compilation) => {
      const code = await this.compile(compilation);
      compilation.hooks.processAssets.tap({ name, stage }, () => this.write(compilation, code));
    });
  }

  /** The site as one script; its faults join those of the build. */
  compile(compilation) {
    const output = { filename: BUNDLE, library: { name: "HelpPages", type: "var" } };
    const child = compilation.createChildCompiler(BUNDLE, output, [
      new EntryPlugin(compilation.compiler.context, this.entry, { name: BUNDLE }),
      new library.EnableLibraryPlugin("var"),
    ]);
    return new Promise((resolve, reject) => {
      child.runAsChild((fault, _entries, built) => {
        if (fault) return reject(fault);
        compilation.errors.push(...built.errors);
        const asset = built.getAsset(BUNDLE);
        resolve(asset === undefined ? undefined : String(asset.source.source()));
      });
    });
  }

  write(compilation, code) {
    for (const { name } of compilation.getAssets()) {
      if (name.startsWith(BUNDLE)) compilation.deleteAsset(name);
    }
    if (code === undefined || compilation.errors.length > 0) return;
    for (const [file, text] of Object.entries(filesOf(code))) {
      compilation.emitAsset(`assets/help/${file}`, new sources.RawSource(text), { minimized: true });
    }
    const folder = join(compilation.compiler.context, PICTURES);
    for (const name of readdirSync(folder)) {
      const picture = new sources.RawSource(readFileSync(join(folder, name)));
      compilation.emitAsset(`assets/help/${name}`, picture);
    }
  }
}

module.exports = { HelpPagesPlugin };
