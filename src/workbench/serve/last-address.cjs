const fs = require("node:fs");
const path = require("node:path");

function addressBefore(record) {
  try {
    return fs.readFileSync(record, "utf8").trim();
  } catch {
    return undefined;
  }
}

/**
 * Browsers keep work by address: at another one than last time the page does not find it. Says so, and notes the
 * address for the next start; nothing is said the first time.
 */
function otherAddress(address, record) {
  const before = addressBefore(record);
  fs.mkdirSync(path.dirname(record), { recursive: true });
  fs.writeFileSync(record, address);
  if (before === undefined || before === address) return "";
  return `\nThe address is another than last time (${before}): work that the browser kept there is not shown here. Stop what uses that port and start again to see it.`;
}

module.exports = { otherAddress };
