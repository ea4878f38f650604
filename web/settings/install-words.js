/**
 * How the app gets onto the home screen, for each browser in the words of its own menus (from
 * memory: they move from version to version).
 */
import { SAFARI_DELETES } from "../data/first-words.js";

const APART = " An app put there starts empty: make a backup here first, and restore it there.";
const SHARE =
  "tap the Share button (a square with an arrow; where there is none, behind the three dots), " +
  "then “Add to Home Screen”.";
const FIREFOX =
  "Firefox on a computer cannot install apps: bookmark this page instead. It opens with or " +
  "without a signal just the same.";
/** @type {[(agent: string) => boolean, string][]} */
const WAYS = [
  [
    (agent) => apple(agent) && /CriOS|FxiOS|EdgiOS|OPT\//.test(agent),
    `Here ${SHARE} If it is not offered, open this page in Safari and do it there.${APART}`,
  ],
  [apple, `In Safari ${SHARE} ${SAFARI_DELETES}${APART}`],
  [
    (agent) => /Macintosh/.test(agent) && /Version\/[\d.]+ Safari/.test(agent),
    `In Safari choose “Add to Dock” in the File menu. ${SAFARI_DELETES}${APART}`,
  ],
  [
    (agent) => /SamsungBrowser/.test(agent),
    "Open the menu (three lines at the bottom), then “Add page to”, then “Home screen”.",
  ],
  [
    (agent) => /Firefox/.test(agent) && /Android/.test(agent),
    "Open the menu (three dots), then “Add app to Home screen”. What you have stored comes too.",
  ],
  [(agent) => /Firefox/.test(agent), FIREFOX],
  [
    (agent) => /Android/.test(agent),
    "Open the menu (three dots), then “Add to Home screen”, and there “Install”. What you " +
      "have stored comes too.",
  ],
  [
    (agent) => /Safari\//.test(agent) && !/Chrom/.test(agent),
    `In the browser’s menu choose “Install” or “Add to Home Screen”. ${SAFARI_DELETES}${APART}`,
  ],
];
const OTHERS =
  "At the right end of the address, or in the browser’s menu, choose “Install” or “Add to home " +
  "screen”. It then opens like any other app, with or without a signal.";

/** An iPhone or an iPad; an iPad says that it is a Mac, but no Mac is touched. */
function apple(agent) {
  return (
    /iPhone|iPad|iPod/.test(agent) || (/Macintosh/.test(agent) && navigator.maxTouchPoints > 1)
  );
}

/** What to do in this browser, in sentences. */
export function installWords() {
  const { userAgent } = navigator;
  return WAYS.find(([fits]) => fits(userAgent))?.[1] ?? OTHERS;
}
