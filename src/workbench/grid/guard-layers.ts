import { Layer } from "@univerjs/preset-sheets-core";

type Drawn = Parameters<Layer["addObject"]>[0];

let isGuarded = false;

/**
 * Lets go of what was drawn once it is taken away. The grid's layers keep listening to every object that ever stood
 * in them, which holds each frame of a selection and of a result in memory at every change of sheet.
 */
export function guardLayers(): void {
  if (isGuarded) return;
  isGuarded = true;
  const prototype = Layer.prototype as unknown as { _layerBehavior(this: Layer, drawn: Drawn): void };
  prototype._layerBehavior = function (drawn) {
    const moved = drawn.onTransformChange$.subscribeEvent(() => {
      this.makeDirty(true);
    });
    drawn.layer = this;
    drawn.disposeWithMe(moved);
  };
}
