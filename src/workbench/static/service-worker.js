/**
 * Keeps every file of the workbench in the browser, so that the page opens without a network after the first
 * visit. The build writes `VERSION` and `FILES` in front of this text.
 *
 * A new version fetches its own files beside the old ones and takes over once no window of the old one is open:
 * a page never runs with the files of two versions.
 */
/* global VERSION, FILES */
const PREFIX = "blade-metallurgy-workbench-";
const NAME = PREFIX + VERSION;

addEventListener("install", (event) => {
  // "reload": what the browser kept of an earlier version must not come in under this one's name.
  const requests = FILES.map((file) => new Request(file, { cache: "reload" }));
  event.waitUntil(caches.open(NAME).then((cache) => cache.addAll(requests)));
});

addEventListener("activate", (event) => {
  const others = (names) => names.filter((name) => name.startsWith(PREFIX) && name !== NAME);
  event.waitUntil(
    caches.keys().then((names) => Promise.all(others(names).map((name) => caches.delete(name)))),
  );
});

addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || new URL(request.url).origin !== location.origin) return;
  const wanted = request.mode === "navigate" ? "index.html" : request;
  const kept = caches.open(NAME).then((cache) => cache.match(wanted, { ignoreSearch: true }));
  event.respondWith(kept.then((answer) => answer ?? fetch(request)));
});
