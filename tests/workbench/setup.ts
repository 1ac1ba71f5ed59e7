import type { TestProject } from "vitest/node";
import { startServer } from "./server";

declare module "vitest" {
  export interface ProvidedContext {
    /** Where the workbench answers, as `npm start` serves it. */
    workbench: string;
  }
}

/** One server for every test file that works the page. */
export async function setup(project: TestProject): Promise<() => void> {
  const { server, address } = await startServer();
  project.provide("workbench", address);
  return () => {
    server.removeAllListeners("exit");
    server.kill();
  };
}
