/** `npm start`: builds the workbench page, serves it on this machine only, prints its address. */
const path = require("node:path");
const { otherAddress } = require("./serve/last-address.cjs");
const { listen, pageServer } = require("./serve/page-server.cjs");

const PREFERRED_PORT = 3000;

const RECORD = path.resolve(__dirname, "../../node_modules/.cache/blade-metallurgy/workbench-address");

async function main() {
  const { server, publish } = pageServer();
  const address = await listen(server, PREFERRED_PORT);
  console.log(`Building the workbench for ${address} ...`);
  // Loaded only now: the compiler takes a while to load, and the waiting page can answer meanwhile.
  const { buildWorkbench } = require("./serve/build.cjs");
  publish(await buildWorkbench());
  console.log(`Workbench ready: ${address}   (Ctrl-C stops it)${otherAddress(address, RECORD)}`);
}

main().catch((fault) => {
  console.error(fault instanceof Error ? fault.message : fault);
  process.exit(1);
});
