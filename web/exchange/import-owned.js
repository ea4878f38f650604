/**
 * Which new pieces of a spreadsheet are owned already, by the engine's own rule of what is the
 * same.
 */
import { all } from "../data/records.js";
import { fate, newRecord } from "./import-run.js";
import { readyRange } from "../data/known-ranges.js";

/** The packs that rows may be of, ready for the engine: Map of id to pack. */
export async function packsOf(rows) {
  const named = rows.flatMap(({ record, candidates }) => [
    record,
    ...candidates.map(({ sets }) => sets),
  ]);
  const packs = new Map();
  for (const id of new Set(named.map((sets) => sets?.pack ?? ""))) {
    const ready = id === "" ? null : await readyRange(id);
    if (ready) packs.set(id, ready);
  }
  return packs;
}

/**
 * Notes on each of these rows what is owned of it: `owned` is "", "item", or "variant" where that
 * is known.
 */
export function noteOwned(state, packs, rows) {
  const fresh = [];
  rows.forEach((row, n) => {
    row.owned = "";
    if (fate(row) !== "new") return;
    const piece = newRecord(row);
    if (piece.type === "piece") fresh.push({ row, piece: { ...piece, id: `row ${n}` } });
  });
  const byId = new Map(fresh.map(({ row, piece }) => [piece.id, row]));
  for (const [id, ready] of packs) {
    const mine = fresh.filter(({ piece }) => piece.pack === id).map(({ piece }) => piece);
    if (mine.length === 0) continue;
    // A copy kept on purpose is no duplicate to part with, but it is owned.
    const pieces = [...all("piece").filter(({ pack }) => pack === id), ...mine].map((piece) => ({
      ...piece,
      kept: false,
    }));
    for (const by of ["item", "variant"])
      for (const { keep: best, part_with: others } of state.engine.duplicates(ready, pieces, by)) {
        const ids = [best, ...others];
        if (ids.every((copy) => byId.has(copy))) continue; // several in the file, none of them here
        for (const copy of ids) if (byId.has(copy)) byId.get(copy).owned = by;
      }
  }
}
