/**
 * What of the collection, the wants and the notebook is of an item or a variant of a range of one's
 * own: it follows a new number, and is told of before a deletion.
 */
import { run } from "../data/queue.js";
import { all, making, record, setting, trashing } from "../data/records.js";
import { button, el } from "../parts/element.js";
import { leaveScreen } from "../parts/navigation.js";
import { saveChange } from "../parts/saving.js";
import { sheet } from "../parts/sheet.js";
import { POINTING, newMove, rowsOf } from "./own-range.js";
import {
  DELETE_IT_ANYWAY,
  HELD_BY_IT,
  IT_IS_IN_THE_BIN,
  NUMBER_CHANGED,
  ONE_RECORD_OF_YOURS_IS,
  recordsOfIt,
  recordsOfYoursAre,
  rowDeleted,
  THEY_STAY,
} from "./own-words.js";

/** The records that are of an item, or of a variant. */
function held(row) {
  const { key } = record(row.range);
  const number = row.type === "range_item" ? row.number : (record(row.item)?.number ?? "");
  const ofVariant = (piece) =>
    piece.variant === row.key || (piece.of ?? []).some(({ variant }) => variant === row.key);
  return POINTING.flatMap(all).filter(
    (kept) =>
      number !== "" &&
      kept.pack === key &&
      kept.item === number &&
      (row.type === "range_item" || ofVariant(kept)),
  );
}

/**
 * Gives an item another number. What is held of it follows in the same change; a row that says so
 * lets those follow that are in the bin, on another device or with somebody else.
 */
export async function renumbered(id, number) {
  let kept = /** @type {boolean | string} */ (false);
  await run(async () => {
    const item = record(id);
    const mine = held(item);
    if (number === "" && mine.length > 0) {
      kept = HELD_BY_IT;
      return;
    }
    const moves = rowsOf(item.range, "range_move").filter(({ what }) => what === "item");
    const back = moves.filter(({ was }) => was === number).map((move) => trashing(move.id));
    const onward = moves
      .filter(({ now, was }) => now === item.number && item.number !== "" && was !== number)
      .map((row) => setting(row.id, "now", row.now, number));
    const move = newMove(item.range, { what: "item", was: item.number, now: number });
    kept = await saveChange(NUMBER_CHANGED, [
      setting(id, "number", item.number, number),
      ...mine.map((piece) => setting(piece.id, "item", piece.item, number)),
      ...back,
      ...onward,
      ...(item.number !== "" && number !== "" ? [making(move)] : []),
    ]);
  });
  return kept;
}

/** Deletes an item or a variant, `rows` in all; what is held of it is told first. */
export async function deleted(what, row, rows) {
  const mine = held(row).length;
  const done = async () => {
    const edits = rows.map(({ id }) => trashing(id));
    const said = IT_IS_IN_THE_BIN;
    if (await saveChange(rowDeleted(what), edits, { said })) leaveScreen();
  };
  if (mine === 0) {
    await done();
    return;
  }
  const shut = sheet(
    recordsOfIt(mine === 1 ? ONE_RECORD_OF_YOURS_IS : recordsOfYoursAre(mine)),
    el("p", {}, THEY_STAY),
    button(
      DELETE_IT_ANYWAY,
      () => {
        shut();
        run(done);
      },
      { class: "main wide" },
    ),
  );
}
