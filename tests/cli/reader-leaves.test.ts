import { EventEmitter } from "node:events";
import { expect, it } from "vitest";
import { letReaderLeave } from "../../src/cli/run-command";

it("goes on where its reader has left, and hides no other fault of writing", () => {
  const stream = new EventEmitter();
  letReaderLeave(stream);
  const fails = (code: string) => () => stream.emit("error", Object.assign(new Error(code), { code }));
  expect(fails("EPIPE")).not.toThrow();
  expect(fails("ENOSPC")).toThrow("ENOSPC");
});
