/**
 * The service worker: makes the app work with no signal, and offers a new version without forcing
 * it.
 */
let registration = null;
let asked = false;

/**
 * Registers it. `ready(waiting)` is called when a new version waits, `replaced()` when another
 * window put one in place.
 */
export async function startWorker({ ready, replaced }) {
  if (!("serviceWorker" in navigator)) return;
  const had = navigator.serviceWorker.controller !== null;
  navigator.serviceWorker.addEventListener("controllerchange", () => {
    if (asked) location.reload();
    else if (had) replaced();
  });
  try {
    registration = await navigator.serviceWorker.register(new URL("../sw.js", import.meta.url), {
      updateViaCache: "none",
    });
  } catch {
    return; // No signal at the first visit, or storage is refused: the app runs all the same.
  }
  if (!registration) return;
  if (registration.waiting && had) ready();
  if (registration.installing) watch(registration.installing, ready);
  registration.addEventListener("updatefound", () => watch(registration.installing, ready));
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible") lookForUpdate();
  });
}

function watch(coming, ready) {
  coming.addEventListener("statechange", () => {
    if (coming.state === "installed" && navigator.serviceWorker.controller) ready();
  });
}

/** Asks the site for a new version; without a signal nothing happens. */
async function lookForUpdate() {
  try {
    await registration?.update();
  } catch {
    // No signal.
  }
}

/** Is a new version waiting? The first of all waits too, for a moment, and is no news. */
export function updateWaiting() {
  return Boolean(registration?.waiting && registration.active);
}

/** Puts the waiting version in place and opens the page again. */
export function useUpdate() {
  asked = true;
  registration?.waiting?.postMessage("use it now");
}

/** Does the app work with no signal yet? */
export function worksOffline() {
  return Boolean(navigator.serviceWorker?.controller);
}

/** The version in use, as the service worker names it; "" while there is none. */
export function buildName() {
  const worker = navigator.serviceWorker?.controller;
  if (!worker) return Promise.resolve("");
  return new Promise((resolve) => {
    const channel = new MessageChannel();
    channel.port1.onmessage = (event) => resolve(event.data);
    setTimeout(() => resolve(""), 1000);
    worker.postMessage("which build", [channel.port2]);
  });
}
