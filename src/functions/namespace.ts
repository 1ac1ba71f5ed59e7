/** The namespace in front of every name: `BLADE.CARBON`. */
export const NAMESPACE = "BLADE";
