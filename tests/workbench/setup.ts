import type { TestProject } from "vitest/node";
import { beginServer } from "./server";

declare module "vitest" {
  export interface ProvidedContext {
    /** Where the workbench answers, as `npm start` serves it. */
    workbench: string;
  }
}

/** One server for every test file that works the page; it builds while the other tests are made ready. */
export async function setup(project: TestProject): Promise<() => void> {
  const { server, address } = await beginServer();
  project.provide("workbench", address);
  return () => {
    server.kill();
  };
}
