import fc from "fast-check";

/** One seed for every property test, so that a run can be repeated; FAST_CHECK_SEED sets another. */
fc.configureGlobal({ seed: Number(process.env.FAST_CHECK_SEED ?? 20261125) });
