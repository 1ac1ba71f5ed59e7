import { fitStainless, missesLeftOut, missOf, STAINLESS_ROWS } from "./fit-stainless";

const fit = fitStainless(STAINLESS_ROWS);
process.stdout.write(`${JSON.stringify(fit)}\n`);
for (const row of STAINLESS_ROWS)
  process.stdout.write(
    `${row.source} ${row.steel} ${row.temperC} ${row.hrc} ${missOf(fit, row).toFixed(1)}\n`,
  );
for (const { row, miss } of missesLeftOut())
  process.stdout.write(`LEFT OUT ${row.source} ${row.steel} ${row.temperC} ${miss.toFixed(1)}\n`);
