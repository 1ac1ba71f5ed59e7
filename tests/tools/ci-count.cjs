/** Reads vitest's JSON report, names what was skipped, prints the closing line; a skip counts as a failure. */
const { readFileSync } = require("node:fs");

const NOTHING = {
  numPassedTests: 0,
  numFailedTests: 1,
  numPendingTests: 0,
  numTodoTests: 0,
  testResults: [],
  success: false,
};

function read(file) {
  try {
    return JSON.parse(readFileSync(file, "utf8"));
  } catch (error) {
    console.log(`no test report: ${error.message}`);
    return NOTHING;
  }
}

const report = read(process.argv[2]);
const tests = report.testResults.flatMap((file) => file.assertionResults);
const skipped = tests.filter(({ status }) => status !== "passed" && status !== "failed");
for (const { fullName, status } of skipped) console.log(`${status}: ${fullName}`);
const brokenFiles = report.testResults.filter(
  (file) => file.status === "failed" && file.assertionResults.every(({ status }) => status === "passed"),
);
for (const { name, message } of brokenFiles) console.log(`broken file: ${name} ${message}`);
const failed = report.numFailedTests + skipped.length + brokenFiles.length;
console.log(`${report.numPassedTests} passed, ${failed} failed`);
process.exitCode = failed === 0 && report.numPassedTests > 0 ? 0 : 1;
