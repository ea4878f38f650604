/**
 * What the collector keeps, as screens: which screen is which, and how all of them save and undo.
 */
import { backToPiece, here, onMoved, pushScreen, remember } from "../data/back-button.js";
import { undo, undoable } from "../data/journal.js";
import { CannotGoOn, loadPack, rawPack } from "../data/packs.js";
import { askToKeep } from "../data/install.js";
import {
  ChangedElsewhere,
  change,
  everything,
  loadRecords,
  onChanged,
  record,
  setting,
} from "../data/records.js";
import { problem } from "../data/store.js";
import { endTyping } from "../parts/fields.js";
import { button, el, heading } from "../parts/element.js";
import { withLook } from "../parts/later-styles.js";
import { NotLoaded, loaded } from "../parts/loaded-later.js";
import { small } from "../parts/say.js";
import { sheet, sheetOpen } from "../parts/sheet.js";
import { announce, leaveTold, notice } from "../parts/status.js";
import { WIDE } from "../parts/wide-window.js";
import { TABLED, tableOf } from "../desk/tables.js";
import { SCREENS, menuLines } from "./screens.js";
import { collectIt, noteIt, sightingIt, wantIt } from "../identify/take-up.js";

/** In a wide window, what draws the list of a screen as a table; else nothing. */
function wideList(screen) {
  return WIDE.matches && TABLED.includes(screen) ? tableOf(screen) : undefined;
}

/** The function of a screen; where it cannot be loaded, one that says so. */
async function functionOf(screen) {
  try {
    await withLook();
    return await SCREENS[screen].load();
  } catch (error) {
    if (!(error instanceof NotLoaded)) throw error;
    console.warn(error.cause);
    return () =>
      el(
        "section",
        { class: "shelf" },
        heading(1, "Not on this device yet"),
        el("p", {}, error.message),
        button("Try again", () => location.reload(), { class: "main" }),
      );
  }
}

/** What `load` gives; null where a pack cannot be read: the records can all the same. */
async function unlessBroken(load) {
  try {
    return await load();
  } catch (error) {
    if (error instanceof CannotGoOn) return null;
    throw error;
  }
}

/** Reads the records and makes what the screens share. */
export async function openShelf(app) {
  await loadRecords();
  const packs = new Map();
  let undoNotice = null;
  let asked = false; // whether the browser was asked to keep what is stored

  const keep = {
    packs,
    menuLines,
    run: app.run,
    /** The ranges there are, without the choice of all at once. */
    ranges: app.list.filter((one) => !one.parts),

    /** A pack as the engine takes it; null where it is not on this device. */
    async ready(id) {
      const entry = keep.ranges.find((one) => one.id === id);
      if (!entry) return null;
      return unlessBroken(async () => {
        const { ready } = await loadPack(app.engine, entry);
        packs.set(id, ready.pack);
        return ready;
      });
    },

    /**
     * Changes records and tells how it went: true when it is kept. `said`: a sentence, shown with
     * an Undo. Runs inside `run`.
     */
    async change(what, edits, { said = "", ...options } = {}) {
      let done;
      try {
        done = await change(what, edits, options);
      } catch (error) {
        if (!(error instanceof ChangedElsewhere)) throw error;
        notice(
          "Another window or device changed or deleted this meanwhile. Nothing was written over " +
            "it: here is how it stands now.",
        );
        await keep.redraw();
        return false;
      }
      if (done.kept === "") notice(problem());
      else if (!asked) askToKeep();
      asked ||= done.kept === "disk";
      if (done.kept === "") return false;
      // now there is something to undo
      document.querySelector("#tools [hidden]")?.removeAttribute("hidden");
      if (said === "") announce("Saved.");
      else offerUndo(said, { group: done.group, what });
      return true;
    },

    /** A function that saves one field of a record, as long as nobody else has changed it. */
    saver(id, field, what) {
      let shown = record(id)[field] ?? null;
      return async (value) => {
        let kept = false;
        await app.run(async () => {
          kept = await keep.set(id, field, shown, value, what);
        });
        if (kept) shown = value;
        return kept;
      };
    },

    async set(id, field, shown, value, what) {
      try {
        const { kept } = await change(`${what} changed`, [setting(id, field, shown, value)]);
        if (kept === "") notice(problem());
        return kept !== "";
      } catch (error) {
        if (!(error instanceof ChangedElsewhere)) throw error;
        askWhich(error.now, () => keep.set(id, field, error.now[field] ?? null, value, what));
        return false;
      }
    },

    /**
     * Goes to another screen; what is being typed is saved first. `instead`: in place of this one;
     * `told`: what was just said stays.
     */
    open(screen, params = {}, { instead = false, told = false } = {}) {
      endTyping();
      return app.run(async () => {
        if (!told) undoNotice?.remove();
        if (instead) remember({ ...params, screen });
        else {
          remember({ top: window.scrollY });
          pushScreen(screen, params);
        }
        if (!told) leave();
        await app.show();
      });
    },

    back() {
      endTyping();
      app.run(() => history.back());
    },

    /** Goes back to the piece being identified, or to its start. */
    identify() {
      endTyping();
      app.run(() => backToPiece());
    },

    /** Draws the screen anew where it stands. */
    async redraw() {
      const top = window.scrollY;
      await app.show(false);
      window.scrollTo(0, top);
    },

    undo() {
      endTyping();
      app.run(async () => {
        if (keep.undoHere) return keep.undoHere();
        const last = await undoable();
        if (last) await takeBack(last);
        else undoNotice = notice("There is nothing to undo.");
      });
    },
    takeBack,
  };

  function offerUndo(said, group) {
    undoNotice = notice(said, [["Undo", () => app.run(() => takeBack(group))]]);
  }

  async function takeBack(last) {
    const { kept, group, left } = await undo(last);
    if (kept === "") notice(problem());
    else {
      const rest = left > 0 ? " What was changed again since stays as it is." : "";
      const actions = last.again
        ? []
        : [["Put it back", () => app.run(() => takeBack({ group, what: last.what, again: true }))]];
      undoNotice = notice(
        `${last.again ? "Put back" : "Undone"}: ${small(last.what)}.${rest}`,
        actions,
      );
      await keep.redraw();
    }
  }

  function askWhich(now, mine) {
    if (!now || now.gone) {
      notice("Another window or device deleted this meanwhile. It is in the trash.");
      return;
    }
    const shut = sheet(
      "Changed in another window",
      el(
        "p",
        {},
        "What you changed here was changed in another window or on another device meanwhile. " +
          "Which is right?",
      ),
      button("Keep mine", () => settle(mine), { class: "plain wide" }),
      button("Keep the other one", () => settle(() => {}), { class: "plain wide" }),
    );
    const settle = (act) => {
      shut();
      app.run(async () => {
        await act();
        await keep.redraw();
      });
    };
  }

  /**
   * Looks what moved in ranges of which another version is here than the records were made with.
   */
  async function lookAtMoved() {
    await (await loaded(import("../range/moved-names.js"))).lookAtMoved(app, keep);
  }

  /** What was only told goes with its screen; not that the storage is in trouble. */
  function leave() {
    if (problem() === "") leaveTold();
  }
  onMoved(leave);

  /**
   * Reads the packs that the records speak of, as far as they are not here: records come by sync
   * too.
   */
  async function readPacks() {
    const used = new Set(everything().map((one) => one.pack));
    const missing = keep.ranges.filter(({ id }) => used.has(id) && !packs.has(id));
    await Promise.all(
      missing.map((one) =>
        unlessBroken(async () => packs.set(one.id, await rawPack(app.engine, one))),
      ),
    );
    return used;
  }

  onChanged(() => {
    const busy = sheetOpen() || document.activeElement?.matches("input, textarea, select");
    if (!SCREENS[here().screen].still) app.run(busy ? readPacks : keep.redraw);
  });

  const used = await readPacks();
  const another = ({ id, version }) => used.has(id) && app.settings.seen[id] !== version;
  if (keep.ranges.some(another)) app.run(lookAtMoved);

  return {
    keep,
    /** The nodes of a screen. */
    draw: async (entry) => {
      await readPacks();
      keep.undoHere = null; // a screen with an Undo of its own puts it here
      const draw = await functionOf(entry.screen);
      return draw(app, keep, entry, wideList(entry.screen));
    },
    takeUp: {
      note: () => noteIt(app, keep),
      piece: () => collectIt(app, keep),
      want: () => wantIt(app, keep),
      sighting: () => sightingIt(app, keep),
    },
    tools: () => {
      const undoIt = button("Undo", keep.undo, {
        class: "plain",
        hidden: !keep.undoHere && everything().length === 0,
      });
      const back = button("Back", keep.back, { class: "plain" });
      return SCREENS[here().screen].undo === false ? [back] : [back, undoIt];
    },
  };
}
