/** Ranges that are added to those that came with the app, kept and taken up. */
import { rawPack } from "../data/packs.js";
import { ranges } from "../data/known-ranges.js";
import { problem } from "../data/store.js";
import { adopt, openRange } from "../identify/range-at-hand.js";
import { notice } from "../parts/status.js";
import { rangingRules } from "./keep-compiled.js";
import { refresh, stored } from "./kept-ranges.js";
import { lookAtMoved } from "./moved-names.js";
import {
  NEW_NUMBER,
  NEW_NUMBERS,
  NEW_QUESTION,
  NEW_QUESTIONS,
  NEW_VARIANT,
  NEW_VARIANTS,
  NUMBER_IS_NOW_ANOTHER,
  NUMBER_TAKEN_OUT,
  NUMBERS_ARE_NOW_OTHERS,
  NUMBERS_CHANGED,
  NUMBERS_TAKEN_OUT,
  ONE_NUMBER_CHANGED,
  ONE_VARIANT_CHANGED,
  QUESTION_CHANGED,
  QUESTION_TAKEN_OUT,
  QUESTIONS_CHANGED,
  QUESTIONS_TAKEN_OUT,
  SMALL_CORRECTIONS_ONLY,
  VARIANT_TAKEN_OUT,
  VARIANTS_CHANGED,
  VARIANTS_TAKEN_OUT,
  writtenDownYourself,
} from "./following-words.js";

/** @import { EditionNews, Pack } from "../data/engine-types.d.ts" */

/** The range that stands under this id already; undefined for none. */
export function standing(id) {
  return ranges().find((range) => range.id === id);
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
    notice(writtenDownYourself(standing(pack.id).name));
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

const counted = (count, single, several) => (count === 1 ? `1 ${single}` : `${count} ${several}`);

/**
 * What is new, in words: "3 new numbers, 2 variants changed, 1 number renumbered".
 * @param {EditionNews} news
 */
export function newsText(news) {
  const groups = [
    [news.new, NEW_NUMBER, NEW_NUMBERS],
    [news.variants_new, NEW_VARIANT, NEW_VARIANTS],
    [news.questions_new, NEW_QUESTION, NEW_QUESTIONS],
    [news.items, ONE_NUMBER_CHANGED, NUMBERS_CHANGED],
    [news.variants, ONE_VARIANT_CHANGED, VARIANTS_CHANGED],
    [news.questions, QUESTION_CHANGED, QUESTIONS_CHANGED],
    [news.moved, NUMBER_IS_NOW_ANOTHER, NUMBERS_ARE_NOW_OTHERS],
    [news.gone, NUMBER_TAKEN_OUT, NUMBERS_TAKEN_OUT],
    [news.variants_gone, VARIANT_TAKEN_OUT, VARIANTS_TAKEN_OUT],
    [news.questions_gone, QUESTION_TAKEN_OUT, QUESTIONS_TAKEN_OUT],
  ];
  const parts = groups
    .filter(([items]) => items.length > 0)
    .map(([items, single, several]) => counted(items.length, single, several));
  return parts.length === 0 ? SMALL_CORRECTIONS_ONLY : parts.join(", ");
}
