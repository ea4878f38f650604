import { loosePhotos } from "../data/kept-photos.js";
import { deleteForGood, everything, trashed, trashing } from "../data/records.js";
import { problem } from "../data/store.js";
import { button, el, heading } from "../parts/element.js";
import { emptyPicture } from "../parts/empty-picture.js";
import { longList } from "../parts/long-list.js";
import { thumb } from "../parts/thumb.js";
import { title } from "../parts/piece-names.js";
import { sheet } from "../parts/sheet.js";
import { notice } from "../parts/status.js";
import { dateText, timeText } from "../parts/days.js";
import { run } from "../data/queue.js";
import { saveChange } from "../parts/saving.js";
import { redraw } from "../parts/navigation.js";
import { packsAtHand } from "../data/known-ranges.js";
import {
  A_REMOVED_PHOTO,
  BIN,
  DELETE_FOR_GOOD,
  DELETED_FOR_GOOD,
  deletedAt,
  EMPTY_THE_BIN,
  ENTRY,
  IN_THE_BIN,
  IT_IS_BACK_WHERE_IT_WAS,
  KEPT_UNTIL_EMPTIED,
  NOTHING_IS_IN_THE_BIN,
  PHOTOS_REMOVED,
  PUT_BACK,
  putBack,
  RECORD_TYPES,
  TAKEN_OUT_OF_THE_BIN,
  THE_BIN_IS_EMPTY,
  WHETHER_TO_EMPTY,
} from "./words.js";

/** The bin: everything deleted, with its photos, until it is emptied. */
export async function trashScreen() {
  const records = trashed();
  const photos = await loosePhotos(everything());
  const empty = records.length + photos.length === 0;
  return el(
    "section",
    { class: "shelf" },
    heading(1, BIN),
    empty ? emptyPicture("bin") : null,
    el("p", {}, empty ? NOTHING_IS_IN_THE_BIN : KEPT_UNTIL_EMPTIED),
    ...longList(IN_THE_BIN, records, (binned) => row(binned)),
    photos.length === 0
      ? null
      : [
          heading(2, PHOTOS_REMOVED),
          el(
            "div",
            { class: "row" },
            photos.map((id) => thumb(id, A_REMOVED_PHOTO)),
          ),
        ],
    empty ? null : button(EMPTY_THE_BIN, () => confirmed(records, photos), { class: "plain wide" }),
  );
}

function row(binned) {
  const name =
    `${RECORD_TYPES[binned.type] ?? ENTRY}: ` +
    `${binned.type === "budget" ? dateText(binned.day) : title(packsAtHand, binned)}`;
  return el(
    "div",
    { class: "row" },
    el(
      "span",
      { class: "lines" },
      name,
      el("span", { class: "quiet" }, deletedAt(timeText(binned.trashed))),
    ),
    button(
      PUT_BACK,
      () =>
        run(async () => {
          const said = IT_IS_BACK_WHERE_IT_WAS;
          if (await saveChange(TAKEN_OUT_OF_THE_BIN, [trashing(binned.id, false)], { said }))
            await redraw();
        }),
      { class: "plain", "aria-label": putBack(name) },
    ),
  );
}

function confirmed(records, photos) {
  const shut = sheet(
    WHETHER_TO_EMPTY,
    el("p", {}, DELETED_FOR_GOOD),
    button(
      DELETE_FOR_GOOD,
      () => {
        shut();
        run(async () => {
          const own = records.flatMap((binned) => binned.photos ?? []);
          const shared = new Set(
            everything()
              .filter((kept) => kept.trashed === "")
              .flatMap((kept) => kept.photos ?? []),
          );
          const gone = [...photos, ...own.filter((id) => !shared.has(id))];
          const kept = await deleteForGood(
            records.map(({ id }) => id),
            gone,
          );
          notice(kept === "" ? problem() : THE_BIN_IS_EMPTY);
          await redraw();
        });
      },
      { class: "main wide" },
    ),
  );
}
