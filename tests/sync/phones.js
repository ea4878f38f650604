/**
 * Phones without screens: the app's own web/sync over storage in memory. A line of
 * standard input is what one phone does, {phone, act, now, id: its id, should it need another, ...},
 * and a line of standard output is what it then holds.
 */
const { copyOf, look, together, use } = await import("./data/store.js");
const { entryOf, operationOf } = await import("./sync/operation-forms.js");
const { fork } = await import("./sync/renaming.js");
const { seal } = await import("./sync/sealing.js");
const { markNow, readState, setState } = await import("./sync/sync-state.js");
const { takeEntries, takeIn } = await import("./sync/taking-in.js");
const { operations, unsent: unsentKeys } = await import("./sync/to-send.js");
const { scrubbed } = await import("./data/records.js");
const { fitting } = await import("./data/record-shapes.js");
const { loadFurther } = await import("./data/engine.js");

let asked = null;
Date.now = () => asked.now;
// web/data/record-shapes.js makes a letter and sixteen of 0-9 and a-z of these bytes
Object.defineProperty(crypto, "getRandomValues", {
  value: (bytes) => {
    for (let place = 0; place < bytes.length; place += 1)
      bytes[place] = parseInt(asked.id[place + 1], 36);
    return bytes;
  },
});

const ACTS = {
  begin: () => setState({ checked: true }),
  copy: ({ phone, from }) => copyOf(phone, from),
  async write({ record, type, fields, more, what, group, time }) {
    if (fields.gone) await seal(); // what is no operation yet would never become one
    await together(["records", "journal"], async (there) => {
      const old = (await there.get("records", record)) ?? { made: time, trashed: "" };
      const names = Object.keys(fields);
      const left = names.filter((name) => fields[name] !== null);
      const after = Object.fromEntries(left.map((name) => [name, fields[name]]));
      const before = Object.fromEntries(names.map((name) => [name, old[name] ?? null]));
      if (fields.gone)
        for (const one of await there.where("journal", "record", record))
          await there.put("journal", scrubbed(one));
      const marks = { undoes: "", side: false, what, group, more };
      await there.put("journal", { ...marks, record, type, time, before, after });
      const row = { id: record, type, made: old.made, changed: time };
      const now = fields.gone ? { gone: true } : fitting({ ...old, ...fields, ...row });
      const trashed = (fields.trashed ?? old.trashed) ? time : "";
      await there.put("records", { ...now, ...row, trashed });
    });
  },
  seal: () => seal(),
  page: ({ answer, from }) => takeIn(answer, from),
  file: ({ ops }) => takeEntries(ops.map((one) => entryOf(one, null, ""))),
  fork: ({ ids }) => fork(ids),
};

async function held() {
  const mark = await markNow();
  const keys = await unsentKeys(mark);
  const unsent = (await operations(keys)).map(({ id }) => id);
  const { device, n, clock, epoch, after, last, round } = await readState();
  return look(["journal", "heads", "clashes", "aside"], async (there) => ({
    state: { device, n, clock, epoch, after, last, round },
    journal: (await there.all("journal"))
      .filter(({ op }) => op)
      .map((entry) => ({ op: operationOf(entry), held: entry.held })),
    heads: await there.all("heads"),
    clashes: await there.all("clashes"),
    aside: await there.all("aside"),
    unsent,
  }));
}

const out = new TextEncoder();
let rest = "";
for await (const some of Deno.stdin.readable.pipeThrough(new TextDecoderStream())) {
  const lines = (rest + some).split("\n");
  rest = lines.pop();
  for (const line of lines) {
    asked = JSON.parse(line);
    await loadFurther();
    use(asked.phone);
    await ACTS[asked.act](asked);
    await Deno.stdout.write(out.encode(JSON.stringify(await held()) + "\n"));
  }
}
