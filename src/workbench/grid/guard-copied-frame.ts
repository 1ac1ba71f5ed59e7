import { SelectionControl } from "@univerjs/preset-sheets-core";

let isGuarded = false;

/**
 * Lets the dashes round copied cells stand still. As published they march sixty times a second until something is
 * typed, on a sheet that is not shown as well: more than the paste itself takes, and a movement that nobody can stop.
 */
export function guardCopiedFrame(): void {
  if (isGuarded) return;
  isGuarded = true;
  const prototype = SelectionControl.prototype as unknown as { _startAntLineAnimation(): void };
  prototype._startAntLineAnimation = () => undefined;
}
