/**
 * What of a draft is not saved, what is wrong with it, and what can be done: save, take back, read
 * anew.
 */
import { updateWaiting, useUpdate } from "../data/update.js";
import { button, el } from "../parts/element.js";
import { announce, notice } from "../parts/status.js";
import { run } from "../data/queue.js";
import { ownUndo } from "../parts/saving.js";
import { goTo, redraw } from "../parts/navigation.js";

/** How the draft stands, with what can be done; drawn anew whenever that changes. */
export function standing(draft) {
  const box = el("div", { class: "editor-bar", role: "group", "aria-label": "What is not saved" });
  const line = el("p", { role: "status" });
  const below = el("div", {});
  const draw = () => {
    const { edits, mistakes, refusal, stray, stale, model, held } = draft;
    const where = held
      ? "kept on this device"
      : "this browser cannot keep them, so save them before you leave";
    const count =
      edits.length === 0 ? "All is saved." : `${many(edits.length, "change")} not saved; ${where}.`;
    const wrong = mistakes.length === 0 ? "" : ` ${many(mistakes.length, "mistake")}.`;
    line.textContent = refusal || `${count}${wrong}`;
    below.replaceChildren(
      el(
        "div",
        { class: "row" },
        stale ? button("Read them again", () => run(() => anew(draft)), { class: "main" }) : null,
        edits.length > 0 && !stale
          ? button("Save", () => run(() => save(draft)), { class: "main" })
          : null,
        edits.length > 0
          ? button("Forget all changes", () => run(() => forget(draft)), {
              class: "plain",
            })
          : null,
        edits.length === 0 && model.undo
          ? button("Take the last save back", () => run(() => undoSave(draft)), {
              class: "plain",
            })
          : null,
      ),
      mistakes.length > 0 ? mistakeList(draft) : "",
      stray.length > 0 ? strayList(draft) : "",
    );
  };
  draw();
  box.append(line, below);
  return { box, draw };
}

export function many(count, what) {
  return `${count} ${what}${count === 1 ? "" : "s"}`;
}

async function save(draft) {
  try {
    if (await draft.save()) {
      announce("Saved.");
      await lookForUpdate();
      notice("Saved. The app takes the new version when you say so.", [
        ["Use it now", useWhenReady],
      ]);
    } else notice("Nothing was saved: first mend what is wrong.");
  } catch (error) {
    Object.assign(draft, { refusal: error.message, stale: error.body?.changed });
    notice(error.message);
  }
  await redraw();
}

async function lookForUpdate() {
  const found = await navigator.serviceWorker?.getRegistration();
  await found?.update().catch(() => {});
}

/** Puts the new version in place as soon as it has come. */
async function useWhenReady() {
  for (let tries = 0; tries < 50 && !updateWaiting(); tries += 1)
    await new Promise((resolve) => setTimeout(resolve, 200));
  if (updateWaiting()) useUpdate();
  else location.reload();
}

async function undoSave(draft) {
  try {
    await draft.undoSave();
    await lookForUpdate();
    notice("The files are as they were before the last save.");
  } catch (error) {
    notice(error.message);
  }
  await redraw();
}

async function anew(draft) {
  try {
    await draft.reread();
    draft.stale = false;
  } catch (error) {
    notice(error.message);
  }
  await redraw();
}

async function forget(draft) {
  draft.forget();
  notice("The changes are forgotten.", [["Put them back", () => run(() => ownUndo()?.())]]);
  await redraw();
}

function mistakeList(draft) {
  const shown = draft.mistakes.slice(0, 40);
  return el(
    "details",
    {},
    el("summary", {}, "What is wrong"),
    el(
      "ul",
      { class: "plain-list" },
      shown.map((one) => {
        const place = [one.file, one.line ? `line ${one.line}` : "", one.column]
          .filter(Boolean)
          .join(", ");
        const open = () => goTo("editor", { pack: draft.id, table: one.table, key: one.key });
        return el(
          "li",
          {},
          `${place}: ${one.text} `,
          one.key
            ? button("Go there", open, { class: "link", "aria-label": `Go there: ${place}` })
            : null,
        );
      }),
    ),
  );
}

function strayList(draft) {
  return el(
    "details",
    { open: true },
    el("summary", {}, "Could not be put on top of the files as they are now"),
    el(
      "ul",
      { class: "plain-list" },
      draft.stray.map((one) =>
        el(
          "li",
          {},
          [
            one.table ?? "drawing",
            one.name ?? one.field ?? "",
            JSON.stringify(one.value ?? one.old ?? one.fields),
          ].join(" "),
        ),
      ),
    ),
    button(
      "Forget these",
      () =>
        run(async () => {
          draft.forgetStray();
          await redraw();
        }),
      { class: "plain" },
    ),
  );
}
