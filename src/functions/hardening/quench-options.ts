import { findQuench, QUENCH_MEDIA } from "../../core/hardening/quench-media";

/** A bath by its word; the help is that of the function. */
export const quenchOptions = {
  label: "quench",
  kind: "quench",
  accepts: 'a quench such as "fast oil"; QUENCHES() lists them',
  words: QUENCH_MEDIA.map(({ word }) => word),
  find: findQuench,
};
