import { COMMON_STEELS, QUESTIONS, unanswered } from "../steel/common-steels";

/** Prints how many of the common blade steels each function answers for, and which it does not. */
for (const name of Object.keys(QUESTIONS)) {
  const missing = unanswered(name);
  process.stdout.write(
    `${name.padEnd(16)}${COMMON_STEELS.length - missing.length} of ${COMMON_STEELS.length}   ${missing.join(" ")}\n`,
  );
}
