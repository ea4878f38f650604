/** Ranges that are added to those that came with the app, kept and taken up. */
import { rawPack } from "../data/packs.js";
import { ranges } from "../data/known-ranges.js";
import { problem } from "../data/store.js";
import { adopt, openRange } from "../identify/range-at-hand.js";
import { notice } from "../parts/status.js";
import { rangingRules } from "./keep-compiled.js";
import { refresh, stored } from "./kept-ranges.js";
import { lookAtMoved } from "./moved-names.js";

/** @import { EditionNews, Pack } from "../data/engine-types.d.ts" */

/** The range that stands under this id already; undefined for none. */
export function standing(id) {
  return ranges().find((one) => one.id === id);
}

/**
 * Keeps a range that came, {pack, text, rows, made, dated}, in place of one of the same id.
 * `line`: what its line of the list has besides; `said`: a sentence for the person. False where it
 * was not kept, which is told.
 */
export async function addRange(
  state,
  { pack, text, rows = null, made = "", dated = "" },
  line,
  said,
) {
  if (standing(pack.id)?.written) {
    notice(
      `You have written down a range yourself that is this one, or began as it: ` +
        `${standing(pack.id).name}. Import this one into yours, or delete yours first.`,
    );
    return false;
  }
  const { id, version } = pack;
  const about = { id, version, own: true, ...pack.range, items: pack.items.length, made, dated };
  const kept = await stored({ ...about, ...line }, text, rows && JSON.stringify(rows));
  if (!kept) {
    notice(problem());
    return false;
  }
  await refresh();
  await (state.piece ? adopt(state.piece) : openRange(state.entry.id));
  if (!(await lookAtMoved(state, said))) notice(said);
  return true;
}

/**
 * What an edition says otherwise than the one that is here.
 * @param {Pack} pack
 * @returns {Promise<EditionNews>}
 */
export async function newsOf(state, entry, pack) {
  const before = await rawPack(state.engine, entry);
  return (await rangingRules()).news_of_edition(before, pack);
}

const counted = (count, one, several) => (count === 1 ? `1 ${one}` : `${count} ${several}`);

/**
 * What is new, in words: "3 new numbers, 2 variants changed, 1 number is now another".
 * @param {EditionNews} news
 */
export function newsText(news) {
  const told = [
    [news.new, "new number", "new numbers"],
    [news.variants_new, "new variant", "new variants"],
    [news.questions_new, "new question", "new questions"],
    [news.items, "number changed", "numbers changed"],
    [news.variants, "variant changed", "variants changed"],
    [news.questions, "question changed", "questions changed"],
    [news.moved, "number is now another", "numbers are now others"],
    [news.gone, "number taken out", "numbers taken out"],
    [news.variants_gone, "variant taken out", "variants taken out"],
    [news.questions_gone, "question taken out", "questions taken out"],
  ];
  const parts = told
    .filter(([found]) => found.length > 0)
    .map(([found, one, several]) => counted(found.length, one, several));
  return parts.length === 0 ? "small corrections only" : parts.join(", ");
}
