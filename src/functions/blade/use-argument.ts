import { findUse, type Use, usesContaining } from "../../core/blade/bands";
import { type Parameter, text } from "../parameters";

/** What the blade is for. */
export const use: Parameter<Use> = text({
  label: "use",
  kind: "use",
  help: "What the blade is for, one of the names that USES() lists; the beginning of a name is enough where it is the only one.",
  accepts: 'a use such as "European sword sharp"; USES() lists them',
  words: usesContaining(""),
  find: findUse,
});
