import { Engine, Layer } from "@univerjs/preset-sheets-core";

/**
 * Lets the grid rest while nothing changes. As published it looks sixty times a second whether something is to be
 * drawn, in the sheet and in the editor of a cell alike, for as long as the page is open.
 */

type Draw = () => void;

interface Drawing {
  runRenderLoop(draw: Draw): void;
  stopRenderLoop(draw?: Draw): void;
}

interface Drawn {
  readonly scene: { getEngine(): Drawing | null | undefined };
  makeDirty(state?: boolean): unknown;
}

/** What an engine's loop draws, and whether something asked to be drawn since it began to. */
interface Loop {
  readonly drawings: Map<Draw, Draw>;
  isAsked: boolean;
  isResting: boolean;
}

const loops = new WeakMap<Drawing, Loop>();

function loopOf(engine: Drawing): Loop {
  const found = loops.get(engine);
  if (found !== undefined) return found;
  const made = { drawings: new Map<Draw, Draw>(), isAsked: false, isResting: false };
  loops.set(engine, made);
  return made;
}

function restWhenIdle(engine: Drawing): void {
  const { runRenderLoop: run, stopRenderLoop: stop } = engine;
  const rest = (owner: Drawing, loop: Loop) => {
    loop.isResting = true;
    for (const followed of loop.drawings.values()) stop.call(owner, followed);
  };
  engine.runRenderLoop = function (draw) {
    const loop = loopOf(this);
    const followed = () => {
      loop.isAsked = false;
      draw();
      // A frame more in which nothing is drawn is laid out and passed on by the browser all the same.
      if (!loop.isAsked) rest(this, loop);
    };
    loop.drawings.set(draw, loop.drawings.get(draw) ?? followed);
    loop.isAsked = true;
    loop.isResting = false;
    for (const known of loop.drawings.values()) run.call(this, known);
  };
  engine.stopRenderLoop = function (draw) {
    const loop = loopOf(this);
    if (draw === undefined) loop.drawings.clear();
    const followed = draw && loop.drawings.get(draw);
    if (draw !== undefined) loop.drawings.delete(draw);
    stop.call(this, followed);
  };
  wake = (owner) => {
    const loop = loops.get(owner);
    if (loop === undefined) return;
    loop.isAsked = true;
    if (!loop.isResting) return;
    loop.isResting = false;
    for (const followed of loop.drawings.values()) run.call(owner, followed);
  };
}

let wake: (engine: Drawing) => void = () => undefined;

function wakeWhenDirty(layer: Drawn): void {
  const { makeDirty } = layer;
  layer.makeDirty = function (state = true) {
    const engine = state ? this.scene.getEngine() : undefined;
    if (engine) wake(engine);
    return makeDirty.call(this, state);
  };
}

let isChanged = false;

/** Changes how every grid draws that is made from now on. */
export function drawWhenNeeded(): void {
  if (isChanged) return;
  isChanged = true;
  restWhenIdle(Engine.prototype as unknown as Drawing);
  wakeWhenDirty(Layer.prototype as unknown as Drawn);
}
