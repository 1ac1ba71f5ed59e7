/** The formula engine's own bundles, joined by the build. They define the globals that the worker's imports stand for. */
declare function importScripts(...files: string[]): void;

importScripts("engine-vendor.js");
