import { button, el } from "../parts/element.js";
import { moneyText } from "../parts/money.js";
import { title, variantText } from "../parts/piece-names.js";
import { sheet } from "../parts/sheet.js";
import { notice } from "../parts/status.js";
import { packsAtHand } from "../data/known-ranges.js";

/** The wants as plain text, a line each. */
export function wantsText(state, wants) {
  const lines = wants.map((want) => {
    const terms = state.engine.want_words(want, moneyText(state.engine, want.most));
    const what = [variantText(packsAtHand, want), ...terms].join(", ");
    return `- ${title(packsAtHand, want)}: ${what}`;
  });
  return ["Wanted:", ...lines, ""].join("\n");
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
    notice("Copied. Paste it into a message.");
  } catch {
    const area = el("textarea", { rows: 12, readonly: true, "aria-label": name }, text);
    sheet(
      name,
      el("p", {}, "Copy this text."),
      area,
      button("Select all", () => area.select(), { class: "plain wide" }),
    );
  }
}
