/** Putting the app on the home screen. */
let prompt = null;

/** Catches the browser's own offer, to be made when the person asks for it. */
export function watchInstall() {
  window.addEventListener("beforeinstallprompt", (event) => {
    event.preventDefault();
    prompt = event;
  });
  window.addEventListener("appinstalled", () => {
    prompt = null;
  });
}

/** Has the browser an offer to make? */
export function canInstall() {
  return prompt !== null;
}

/** Makes the browser's offer. An offer can be made once only. */
export async function install() {
  const offer = prompt;
  prompt = null;
  await offer?.prompt();
}

/** Was the app opened from the home screen? */
export function installed() {
  const { standalone } = /** @type {any} */ (navigator); // Safari's own
  return matchMedia("(display-mode: standalone)").matches || standalone === true;
}

/** Is this Safari, which has no offer to make and deletes what pages store? */
export function safari() {
  return (
    "standalone" in navigator ||
    (/Safari\//.test(navigator.userAgent) && !/Chrom|Android/.test(navigator.userAgent))
  );
}

/** Is this an app on the home screen of an iPhone or iPad, without downloads and printer? */
export function onHomeScreen() {
  return installed() && safari() && navigator.maxTouchPoints > 1;
}

/** May all that is stored be gone after a week without use? */
export function mayVanish() {
  return safari() && !installed();
}

/** Will the browser keep what is stored? true, false, or null where it does not say. */
export async function kept() {
  return (await navigator.storage?.persisted?.()) ?? null;
}

/** Asks the browser to keep what is stored. */
export async function askToKeep() {
  return (await navigator.storage?.persist?.()) ?? null;
}
