/**
 * Lets the browser keep the page's files, where they come from a static host: only there the page names a manifest.
 * The server of `npm start` builds anew at every start, and its page must never be an old one.
 */
export function keepFiles(): void {
  const isStatic = document.querySelector('link[rel="manifest"]') !== null;
  if (!isStatic || !("serviceWorker" in navigator)) return;
  // Without it the page works all the same, as long as there is a network.
  navigator.serviceWorker.register("service-worker.js").catch(() => undefined);
}
