import { button, el } from "../parts/element.js";
import { moneyText } from "../parts/money.js";
import { title, variantText } from "../parts/piece-names.js";
import { sheet } from "../parts/sheet.js";
import { notice } from "../parts/status.js";
import { packsAtHand } from "../data/known-ranges.js";
import { COPIED_TO_PASTE, COPY_THIS_TEXT, SELECT_ALL, WANTED_LINES } from "./words.js";

/** The wants as plain text, a line each. */
export function wantsText(state, wants) {
  const lines = wants.map((want) => {
    const terms = state.engine.want_words(want, moneyText(state.engine, want.most));
    const what = [variantText(packsAtHand, want), ...terms].join(", ");
    return `- ${title(packsAtHand, want)}: ${what}`;
  });
  return [WANTED_LINES, ...lines, ""].join("\n");
}

/** Hands a text to another app; where that cannot be, copies it; where that cannot be, shows it. */
export async function share(name, text) {
  if (navigator.share) {
    try {
      await navigator.share({ title: name, text });
      return;
    } catch (error) {
      if (error.name === "AbortError") return;
    }
  }
  try {
    await navigator.clipboard.writeText(text);
    notice(COPIED_TO_PASTE);
  } catch {
    const area = el("textarea", { rows: 12, readonly: true, "aria-label": name }, text);
    sheet(
      name,
      el("p", {}, COPY_THIS_TEXT),
      area,
      button(SELECT_ALL, () => area.select(), { class: "plain wide" }),
    );
  }
}
