/** Set by a build for development alone, so that it can stand beside a released add-in in one Excel. */
declare const DEVELOPMENT_NAMESPACE: string | undefined;

/** The namespace in front of every name: `BLADE.CARBON`. */
export const NAMESPACE = typeof DEVELOPMENT_NAMESPACE === "string" ? DEVELOPMENT_NAMESPACE : "BLADE";
