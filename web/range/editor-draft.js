/**
 * A pack as the server reads it, with the edits that are not saved yet. They are kept on this
 * device
 * until they are saved or taken back, across reloads, and put on top of the files when these were
 * changed meanwhile.
 *
 *   model    {id, version, tables: {name: [{key, line, fields}]}, columns, files, drawings,
 *            mistakes,
 *            undo}
 *   edits    as the server takes them; `was`: what the entry said when the edit was made
 *   stray    edits that no longer fit anywhere
 */
import { ask, post } from "../data/server.js";
import { same } from "../data/record-shapes.js";
import { read, write } from "../data/store.js";

const PAUSE = 500;
const NAMES = {
  items: "number",
  variants: "id",
  sources: "id",
  kinds: "id",
  parts: "id",
  feature: "id",
};
const drafts = new Map();

/** The draft of a pack, read from the server when it is first wanted. Throws Refused. */
export async function draftOf(id) {
  if (!drafts.has(id)) {
    const draft = new Draft(id);
    await draft.reread();
    drafts.set(id, draft);
  }
  return drafts.get(id);
}

class Draft {
  constructor(id) {
    this.id = id;
    this.edits = [];
    this.stray = [];
    this.step = ""; // the field that is being typed in
    this.before = []; // the edits as they were before each change, for taking one back
    this.mistakes = [];
    this.refusal = "";
    this.held = true;
    this.kept = null; // resolves when the latest edits are on the disk
    this.changed = () => {}; // what the screen does after a change, and after a check
    this.checked = () => {};
    this.asked = 0;
    this.timer = 0;
  }

  /** Reads the files anew and puts the edits on top. Throws Refused. */
  async reread() {
    this.model = await ask(this.at());
    this.mistakes = this.model.mistakes;
    const kept = (await read("kept", this.place())) ?? {
      version: "",
      edits: this.edits,
      stray: [],
    };
    const fits = kept.version === this.model.version;
    const found = kept.edits.map((edit) => (fits ? edit : this.fitted(edit)));
    this.edits = found.filter(Boolean);
    this.stray = [...(kept.stray ?? []), ...kept.edits.filter((_, place) => !found[place])];
    this.before = [];
    this.step = "";
    await this.keep();
    this.check(0);
  }

  at(what = "") {
    return `editor/packs/${this.id}${what}`;
  }

  place() {
    return `editor ${this.id}`;
  }

  /** Keeps the edits on this device; `held` says whether that could be done. */
  async keep() {
    const { edits, stray } = this;
    this.held = await write("kept", this.place(), { version: this.model.version, edits, stray });
    this.changed();
  }

  /** An edit made on other files, for these; null where what it changes is not as it was. */
  fitted(edit) {
    if (edit.do === "add") return edit;
    if (edit.do === "draw")
      return (this.model.drawings[edit.name] ?? "") === edit.old ? edit : null;
    const there = this.model.tables[edit.table] ?? [];
    const name = NAMES[edit.table];
    const alike =
      there.find(({ fields }) => same(fields, edit.was)) ??
      there.find(
        ({ fields }) =>
          (edit.table === "range" || (name && fields[name] === edit.was[name])) &&
          edit.do === "set" &&
          same(fields[edit.field] ?? null, edit.old),
      );
    return alike ? { ...edit, key: alike.key, was: alike.fields } : null;
  }

  /** The entries of a table as they would be: [{key, line, fields, added, removed, was}]. */
  entries(table) {
    const there = this.model.tables[table].map((one) => ({
      ...one,
      was: one.fields,
      added: false,
    }));
    for (const edit of this.edits.filter((one) => one.table === table)) {
      const { key } = edit;
      if (edit.do === "add")
        there.push({ key, line: 0, fields: edit.fields, was: {}, added: true });
      const entry = there.find((one) => one.key === key);
      if (edit.do === "remove") entry.removed = true;
      if (edit.do === "set") entry.fields = withField(entry.fields, edit.field, edit.value);
    }
    if (table === "variants") {
      const now = this.renamed();
      for (const one of there)
        one.fields = { ...one.fields, item: now.get(one.fields.item) ?? one.fields.item };
    }
    return there.filter((one) => !one.removed);
  }

  /** Items with a new number: as it was -> as it is. What points to them is changed on saving. */
  renamed() {
    const sets = this.edits.filter(
      (one) => one.do === "set" && one.table === "items" && one.field === "number",
    );
    return new Map(
      sets.filter(({ old, value }) => old && value).map(({ old, value }) => [old, value]),
    );
  }

  entry(table, key) {
    return this.entries(table).find((one) => one.key === key);
  }

  /**
   * Sets one field of an entry; null: it is not there. `typing`: what is typed on is taken back at
   * once.
   */
  set(table, key, field, value, typing = false) {
    const step = typing ? `${table} ${key} ${field}` : "";
    const entry = this.entry(table, key);
    if (!entry || same(entry.fields[field] ?? null, value)) return;
    const own = (one) =>
      one.do === "set" && one.table === table && one.key === key && one.field === field;
    if (entry.added) {
      const fields = withField(entry.fields, field, value);
      this.replace(
        this.edits.map((one) => (one.do === "add" && one.key === key ? { ...one, fields } : one)),
        step,
      );
    } else {
      const rest = this.edits.filter((one) => !own(one));
      const old = entry.was[field] ?? null;
      const edit = { do: "set", table, key, field, old, value, was: entry.was };
      this.replace(
        same(old, value) || (old === null && value === "") ? rest : [...rest, edit],
        step,
      );
    }
  }

  /** Adds an entry; gives its key. */
  add(table, fields) {
    const used = this.edits
      .filter((one) => one.do === "add")
      .map(({ key }) => Number(key.slice(1)));
    const key = `n${Math.max(0, ...used) + 1}`;
    this.replace([...this.edits, { do: "add", table, key, fields }]);
    return key;
  }

  /**
   * Takes entries away together: [[table, key]], and drawings. Gives what puts just these back,
   * whatever was changed since.
   */
  remove(gone, drawings = []) {
    const before = this.edits;
    const drawn = drawings.filter((name) => this.drawing(name) !== "");
    let edits = drawn.reduce((list, name) => this.drawn(list, name, ""), this.edits);
    for (const [table, key] of gone) {
      const { added, was } = this.entry(table, key);
      edits = edits.filter((one) => one.table !== table || one.key !== key);
      if (!added) edits = [...edits, { do: "remove", table, key, old: was, was }];
    }
    this.replace(edits);
    const taken = (one) =>
      gone.some(([table, key]) => one.table === table && one.key === key) ||
      (one.do === "draw" && drawn.includes(one.name));
    return () =>
      this.replace([...this.edits.filter((one) => !taken(one)), ...before.filter(taken)]);
  }

  /** The drawing of that name as it would be; "" for none. */
  drawing(name) {
    const edit = this.edits.find((one) => one.do === "draw" && one.name === name);
    return edit ? edit.value : (this.model.drawings[name] ?? "");
  }

  /** Puts a drawing in place; "": takes it away. */
  draw(name, value) {
    this.replace(this.drawn(this.edits, name, value));
  }

  drawn(edits, name, value) {
    const old = this.model.drawings[name] ?? "";
    const rest = edits.filter((one) => one.do !== "draw" || one.name !== name);
    return old === value ? rest : [...rest, { do: "draw", name, old, value }];
  }

  drawings() {
    const drawn = this.edits
      .filter((one) => one.do === "draw")
      .map(({ name, value }) => [name, value]);
    return { ...this.model.drawings, ...Object.fromEntries(drawn) };
  }

  /** `step`: a change like the last one is no step of its own. */
  replace(edits, step = "") {
    if (step === "" || step !== this.step) this.before.push(this.edits);
    this.step = step;
    this.edits = edits;
    this.touched();
  }

  /** Takes the last change back; false where there is none. */
  takeBack() {
    if (this.before.length === 0) return false;
    this.edits = this.before.pop();
    this.step = "";
    this.touched();
    return true;
  }

  /** Forgets all that is not saved. */
  forget() {
    this.stray = [];
    this.replace([]);
  }

  forgetStray() {
    this.stray = [];
    this.touched();
  }

  touched() {
    this.kept = this.keep();
    this.check(PAUSE);
  }

  sent() {
    const edits = this.edits.map(({ was, ...edit }) => edit);
    return { version: this.model.version, edits };
  }

  /** Asks the server what is wrong with the edits, after a pause in typing. */
  check(pause) {
    clearTimeout(this.timer);
    this.asked += 1;
    const turn = this.asked;
    this.timer = setTimeout(async () => {
      let found = { mistakes: [], refusal: "" };
      try {
        found = { refusal: "", ...(await post(this.at("/check"), this.sent())) };
      } catch (error) {
        found.refusal = error.message;
        found.stale = error.body?.changed;
      }
      if (turn !== this.asked) return;
      Object.assign(this, { mistakes: found.mistakes, refusal: found.refusal, stale: found.stale });
      this.checked();
    }, pause);
  }

  /**
   * Writes the files: true when that is done. What is wrong is in `mistakes`, or thrown (Refused).
   */
  async save() {
    clearTimeout(this.timer);
    const answer = await post(this.at("/save"), this.sent());
    this.mistakes = answer.mistakes;
    if (answer.pack) await this.restart(answer.pack);
    else this.checked();
    return Boolean(answer.pack);
  }

  /** Takes the last save back. Throws Refused. */
  async undoSave() {
    const { pack } = await post(this.at("/undo"), {});
    await this.restart(pack);
  }

  async restart(model) {
    Object.assign(this, {
      model,
      edits: [],
      before: [],
      step: "",
      mistakes: model.mistakes,
      refusal: "",
      stale: false,
    });
    await this.keep();
  }

  /** A feature as a compiled pack has it, in a pack of its own: {pack, feature}. */
  feature(entry) {
    const { fields } = entry;
    const parts = this.entries("parts").map((one) => one.fields);
    const states = listed(fields.states).map((state) => ({
      ...state,
      drawing: `${fields.id}-${state.id}`,
    }));
    const part = parts.findIndex((one) => one.id === fields.part);
    const feature = {
      id: "",
      name: "",
      question: "",
      where: "",
      seconds: 1,
      needs: "nothing",
      none: -1,
      mistaken: [],
      kinds: [],
      ...fields,
      states,
      part,
    };
    return {
      pack: { features: [feature], parts, drawings: this.drawings(), items: [], kinds: [] },
      feature: 0,
    };
  }
}

/** A list, whatever stands there. */
export function listed(value) {
  return Array.isArray(value) ? value : [];
}

function withField(fields, field, value) {
  const { [field]: _, ...rest } = fields;
  return value === null ? rest : { ...fields, [field]: value };
}
