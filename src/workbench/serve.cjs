/** `npm start`: builds the workbench page, serves it on this machine only, prints its address. */
const fs = require("node:fs");
const path = require("node:path");
const { listen, pageServer } = require("./serve/page-server.cjs");

const PREFERRED_PORT = 3000;

const RECORD = path.resolve(__dirname, "../../node_modules/.cache/blade-metallurgy/workbench-address");

/** Browsers keep work by address: at another one than last time, the page does not find it. */
function otherAddress(address) {
  let before;
  try {
    before = fs.readFileSync(RECORD, "utf8").trim();
  } catch {
    before = address;
  }
  fs.mkdirSync(path.dirname(RECORD), { recursive: true });
  fs.writeFileSync(RECORD, address);
  if (before === address) return "";
  return `\nThe address is another than last time (${before}): work that the browser kept there is not shown here. Stop what uses that port and start again to see it.`;
}

async function main() {
  const { server, publish } = pageServer();
  const address = await listen(server, PREFERRED_PORT);
  console.log("Building the workbench ...");
  // Loaded only now: the compiler takes a while to load, and the waiting page can answer meanwhile.
  const { buildWorkbench } = require("./serve/build.cjs");
  publish(await buildWorkbench());
  console.log(`Workbench ready: ${address}   (Ctrl-C stops it)${otherAddress(address)}`);
}

main().catch((fault) => {
  console.error(fault instanceof Error ? fault.message : fault);
  process.exit(1);
});
