import { loosePhotos } from "../data/kept-photos.js";
import { deleteForGood, everything, trashed, trashing } from "../data/records.js";
import { problem } from "../data/store.js";
import { button, el, heading } from "../parts/element.js";
import { emptyPicture } from "../parts/empty-picture.js";
import { longList, thumb } from "../parts/long-list.js";
import { title } from "../parts/piece-names.js";
import { sheet } from "../parts/sheet.js";
import { notice } from "../parts/status.js";
import { dateText, timeText } from "../parts/days.js";
import { run } from "../data/queue.js";
import { saveChange } from "../parts/saving.js";
import { redraw } from "../parts/navigation.js";
import { packsAtHand } from "../data/known-ranges.js";

const TYPES = {
  piece: "Piece",
  want: "Want",
  note: "Note",
  sighting: "Sighting",
  budget: "Budget",
  range: "Range",
  range_kind: "Kind of piece",
  range_part: "Part",
  range_caution: "Caution",
  range_feature: "Feature",
  range_state: "What can be seen",
  range_item: "Item",
  range_variant: "Variant",
  range_change: "Running change",
  range_source: "Source",
  range_move: "Old number",
};

/** The bin: everything deleted, with its photos, until it is emptied. */
export async function trashScreen() {
  const records = trashed();
  const photos = await loosePhotos(everything());
  const empty = records.length + photos.length === 0;
  return el(
    "section",
    { class: "shelf" },
    heading(1, "Bin"),
    empty ? emptyPicture("bin") : null,
    el(
      "p",
      {},
      empty
        ? "Nothing is in the bin."
        : "Everything here, photos too, is kept until you empty the bin.",
    ),
    ...longList("In the bin", records, (one) => row(one)),
    photos.length === 0
      ? null
      : [
          heading(2, "Photos removed"),
          el(
            "div",
            { class: "row" },
            photos.map((id) => thumb(id, "A removed photo")),
          ),
        ],
    empty
      ? null
      : button("Empty the bin", () => confirmed(records, photos), { class: "plain wide" }),
  );
}

function row(one) {
  const name =
    `${TYPES[one.type] ?? "Entry"}: ` +
    `${one.type === "budget" ? dateText(one.day) : title(packsAtHand, one)}`;
  return el(
    "div",
    { class: "row" },
    el(
      "span",
      { class: "lines" },
      name,
      el("span", { class: "quiet" }, `Deleted ${timeText(one.trashed)}`),
    ),
    button(
      "Put back",
      () =>
        run(async () => {
          const said = "It is back where it was.";
          if (await saveChange("Taken out of the bin", [trashing(one.id, false)], { said }))
            await redraw();
        }),
      { class: "plain", "aria-label": `Put back: ${name}` },
    ),
  );
}

function confirmed(records, photos) {
  const shut = sheet(
    "Empty the bin?",
    el(
      "p",
      {},
      "Everything in it is deleted for good, with its photos and history. This is the one thing " +
        "Undo cannot take back.",
    ),
    button(
      "Delete for good",
      () => {
        shut();
        run(async () => {
          const own = records.flatMap((one) => one.photos ?? []);
          const shared = new Set(
            everything()
              .filter((one) => one.trashed === "")
              .flatMap((one) => one.photos ?? []),
          );
          const gone = [...photos, ...own.filter((id) => !shared.has(id))];
          const kept = await deleteForGood(
            records.map(({ id }) => id),
            gone,
          );
          notice(kept === "" ? problem() : "The bin is empty.");
          await redraw();
        });
      },
      { class: "main wide" },
    ),
  );
}
