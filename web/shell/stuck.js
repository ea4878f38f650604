import { CannotGoOn } from "../data/engine.js";
import { putBy, restored } from "../data/piece-at-hand.js";
import { keepSettings } from "../data/settings.js";
import { StorageLost } from "../data/storage-connection.js";
import { button, el, heading } from "../parts/element.js";
import { loaded } from "../parts/loaded-later.js";
import { notice } from "../parts/status.js";
import {
  MAKE_A_BACKUP_FILE,
  NO_BACKUP_FILE,
  START_WITH_ANOTHER_PIECE,
  THE_APP_CANNOT_GO_ON,
  TRY_AGAIN,
  useInstead,
  WRONG_AT_THE_START,
} from "./first-words.js";

/** What is shown when the app cannot show what it should: why, and the ways on. */
export function stuckScreen(state, error) {
  const own = error instanceof CannotGoOn || error instanceof StorageLost;
  const why = own ? error.message : WRONG_AT_THE_START;
  const others = state.list.filter((range) => range.id !== state.opening);
  const ways = [
    [TRY_AGAIN, () => location.reload()],
    [MAKE_A_BACKUP_FILE, backUp],
    [START_WITH_ANOTHER_PIECE, () => startOver(state, state.settings?.range ?? "")],
    ...others.map((range) => [useInstead(range.name), () => startOver(state, range.id)]),
  ];
  const buttons = ways.map(([label, act]) => button(label, act, { class: "plain wide" }));
  return el(
    "section",
    { class: "answer" },
    heading(1, THE_APP_CANNOT_GO_ON),
    el("p", {}, why),
    el("div", { class: "stack" }, buttons),
  );
}

/** What is kept can be had as a file whatever else goes wrong. */
async function backUp() {
  try {
    const { saveBackup } = await loaded(import("../exchange/save-backup.js"));
    notice(await saveBackup());
  } catch (error) {
    console.error(error);
    if (error instanceof StorageLost) notice(error.message);
    else notice(NO_BACKUP_FILE);
  }
}

/** Puts the piece by and opens the app again with this range. */
async function startOver(state, range) {
  const { piece } = await restored();
  if (piece) await putBy(piece);
  if (state.settings) await keepSettings({ ...state.settings, range });
  location.reload();
}
