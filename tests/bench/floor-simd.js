/**
 * The same floor with WebAssembly's SIMD: all that goes through the rows is done in floor-simd.wat,
 * everything else by floor.js and floor-worth.js. Results are theirs but for the order of the sums.
 */
import { BEYOND, RECORDED, REPLACED, beginning, partOf } from "./floor.js";
import { KIN_LEFT_OUT, LEFT_OUT, SHRINK, worthOf } from "./floor-worth.js";

const SORTS = 4; // the row itself and three sorts of relatives
const BLOCK = 512; // rows that all answers are taken into at once: they stay in the nearest cache
const LIMITS = 8; // that the code looks at in one go
const PAGE = 65_536;
const READINGS = 50; // the browser's clock has steps of 0.1 ms

/** Memory for what is put there once and for what each answer needs. */
function placing(bytes) {
  const memory = new WebAssembly.Memory({ initial: Math.ceil(bytes / PAGE) });
  let end = 64;
  const place = (Sort, length) => {
    const made = new Sort(memory.buffer, end, length);
    end = Math.ceil((end + made.byteLength) / 16) * 16;
    return made;
  };
  return { memory, place, used: () => end, back: (at) => (end = at) };
}

/** The pack of `floorOf` laid out for the code. */
export async function simdOf(floor, code) {
  const { N, K, kind, begin, features, wary } = floor;
  const widest = features.reduce((most, { count }) => Math.max(most, count), 0);
  const own =
    N * (32 + 32 + 32 + 16 + 4 + 4 + 8 + 4 + 8 + 4 + 4 + 32 + 8) + N * features.length * 2;
  const room = placing(own + widest * K * 400 + N * 8 * floor.parts.length + 4 * PAGE);
  const { place } = room;
  const begun = beginning(floor);
  const four = (own4) => {
    const out = place(Float64Array, N * SORTS);
    for (let i = 0; i < N; i += 1) own4(i).forEach((one, n) => (out[i * SORTS + n] = one));
    return out;
  };
  const first = four((i) => [begun.chances[i], ...begun.kin.map((one) => one[i])]);
  const less = four((i) => [0, ...begun.less.map((one) => one[i])]);
  const put = (Sort, values) => {
    const out = place(Sort, values.length);
    out.set(values);
    return out;
  };
  const simd = {
    floor,
    room,
    first,
    less,
    strangers: begun.strangers,
    kind: put(Uint32Array, kind),
    begin: put(Uint32Array, begin),
    codes: features.map(({ codes }) => put(Uint16Array, codes)),
    wary: put(Float64Array, [0, ...wary.slice(0, SORTS - 1)]),
    // what each answer fills anew
    row: place(Float64Array, N * SORTS),
    pair: place(Float64Array, N * 2),
    sums: place(Float64Array, K * SORTS),
    most: place(Float64Array, 2),
    limits: place(Float64Array, LIMITS * 2),
    lost: place(Float64Array, LIMITS * 2),
    rows: place(Uint32Array, N),
    weights: place(Float64Array, N),
    starts: place(Uint32Array, N + 1),
    chance: place(Float64Array, N),
    near: place(Uint32Array, N),
    nearest: place(Float64Array, N * SORTS),
    mixed: place(Uint32Array, N),
  };
  const given = { floor: { memory: room.memory } };
  const { instance } = await WebAssembly.instantiate(code, given);
  return { ...simd, run: instance.exports, free: room.used() };
}

/** What `floorRun` gives. */
export function simdRun(simd, answers) {
  const { floor, room, run, row, first, less, kind, sums } = simd;
  const { K, features, parts } = floor;
  room.back(simd.free);
  const strangers = simd.strangers.slice();
  row.set(first);
  const steps = answers
    .filter(([f]) => features[f].part < 0)
    .map(([f, a]) => answered(simd, f, a, strangers));
  const known = parts.map((part, p) => {
    const told = answers.filter(([f]) => features[f].part === p);
    const found = partOf(floor, part, told, strangers);
    const of = found.of === floor.kind ? kind : inside(room, Uint32Array, found.of);
    if (found.factors.length > 0) steps.push(parted(simd, of, found.factors));
    return { ...found, of };
  });
  for (let from = 0; from < floor.N && steps.length > 0; from += BLOCK)
    for (const step of steps) step(from, Math.min(floor.N, from + BLOCK));
  const end = row.byteOffset + row.byteLength;
  sums.fill(0);
  run.related(row.byteOffset, less.byteOffset, kind.byteOffset, sums.byteOffset, end);
  const all = sum(sums) + sum(strangers);
  run.scaled(
    row.byteOffset,
    simd.pair.byteOffset,
    simd.wary.byteOffset,
    1 / all,
    simd.most.byteOffset,
    end,
  );
  for (let k = 0; k < K; k += 1) strangers[k] /= all;
  const unrecorded = strangers.slice();
  for (let k = 0; k < K; k += 1)
    for (let n = 1; n < SORTS; n += 1) unrecorded[k] += sums[k * SORTS + n] / all;
  const left = focusOf(simd, sums, all, strangers);
  const done = new Set(answers.map(([f]) => f));
  const whole = { ...floor, kind };
  const bits = features.map((feature, f) =>
    done.has(f)
      ? -1
      : worthOf(feature, whole, known, left, unrecorded, talliesOf(simd, simd.codes[f])),
  );
  const chances = () => Float64Array.from({ length: floor.N }, (_, i) => row[i * SORTS]);
  return { chances, unrecorded, bits };
}

const sum = (list) => list.reduce((a, b) => a + b, 0);

function inside(room, Sort, values) {
  const out = room.place(Sort, values.length);
  out.set(values);
  return out;
}

/** Takes one answer into rows: gives what does so for some of them. */
function answered({ room, run, row, codes, kind, floor }, f, a, strangers) {
  const { K } = floor;
  const { S, count, byCode, byKind, strange, kin } = floor.features[f];
  const table = room.place(Float64Array, (count + K) * SORTS);
  for (let c = 1; c < count; c += 1) {
    table[c * SORTS] = RECORDED * byCode[c * S + a];
    for (let n = 0; n < kin.length; n += 1) table[c * SORTS + 1 + n] = kin[n][c * S + a];
  }
  for (let k = 0; k < K; k += 1) {
    table.fill(REPLACED * byKind[k * S + a], (count + k) * SORTS, (count + k + 1) * SORTS);
    strangers[k] *= BEYOND * strange[k * S + a];
  }
  const [rows, code, kinds] = [row.byteOffset, codes[f].byteOffset, kind.byteOffset];
  return (from, to) =>
    run.answered(
      rows + from * 32,
      code + from * 2,
      kinds + from * 4,
      table.byteOffset,
      count,
      rows + to * 32,
    );
}

/** The same for what the answers on one part come to. */
function parted({ room, run, row }, of, factors) {
  const table = room.place(Float64Array, factors[0].length * SORTS);
  factors.forEach((one, n) => one.forEach((value, c) => (table[c * SORTS + n] = value)));
  const [rows, classes] = [row.byteOffset, of.byteOffset];
  return (from, to) =>
    run.parted(rows + from * 32, classes + from * 4, table.byteOffset, rows + to * 32);
}

/** Under which chance rows are left out, and under which their relatives. */
function faint({ run, pair, most, limits, lost }) {
  const out = [-1, -1];
  const enough = [LEFT_OUT, KIN_LEFT_OUT];
  for (let from = 0; from < SHRINK.length && out.includes(-1); from += LIMITS) {
    for (let n = 0; n < LIMITS * 2; n += 1)
      limits[n] = most[n % 2] * (SHRINK[from + Math.floor(n / 2)] ?? 0);
    const end = pair.byteOffset + pair.byteLength;
    run.under(pair.byteOffset, limits.byteOffset, lost.byteOffset, end);
    for (let n = 0; n < LIMITS * 2 && from + Math.floor(n / 2) < SHRINK.length; n += 1)
      if (out[n % 2] < 0 && lost[n] <= enough[n % 2]) out[n % 2] = limits[n];
  }
  return out.map((one) => Math.max(0, one));
}

function focusOf(simd, sums, all, strangers) {
  const { floor, run, pair, begin, rows, weights, starts, chance, near, nearest, row, less } = simd;
  const { N, K, wary } = floor;
  const [least, enough] = faint(simd);
  const outcomes = run.kept(
    pair.byteOffset,
    begin.byteOffset,
    begin.length - 1,
    least,
    rows.byteOffset,
    weights.byteOffset,
    starts.byteOffset,
    chance.byteOffset,
  );
  const count = run.near(
    pair.byteOffset,
    row.byteOffset,
    less.byteOffset,
    simd.wary.byteOffset,
    N,
    enough,
    near.byteOffset,
    nearest.byteOffset,
  );
  let related = 0;
  for (let k = 0; k < K; k += 1)
    for (let n = 1; n < SORTS; n += 1) related += (wary[n - 1] * sums[k * SORTS + n]) / all;
  let whole = 0;
  for (let o = 0; o < outcomes; o += 1) whole += chance[o];
  const alien = strangers.map((one) => wary[SORTS - 1] * one);
  return { rows, weights, starts, chance, outcomes, whole, count, related, alien };
}

/** The sums by class of one question. */
function talliesOf(simd, codes) {
  const { room, run, rows, starts, chance, mixed, near, nearest } = simd;
  return {
    variants(of, width, count, { outcomes }) {
      room.back(simd.free + simd.floor.parts.length * (simd.floor.N * 4 + 16));
      const held = room.place(Float64Array, count * width).fill(0);
      const others = run.held(
        codes.byteOffset,
        of.byteOffset,
        width,
        rows.byteOffset,
        starts.byteOffset,
        chance.byteOffset,
        outcomes,
        held.byteOffset,
        mixed.byteOffset,
      );
      return { held, mixed: mixed.subarray(0, others) };
    },
    relatives(of, width, classes, { count }) {
      const held = room.place(Float64Array, classes * width * SORTS).fill(0);
      const end = near.byteOffset + count * 4;
      if (count > 0)
        run.nearest(
          codes.byteOffset,
          of.byteOffset,
          width,
          near.byteOffset,
          nearest.byteOffset,
          held.byteOffset,
          end,
        );
      return held;
    },
  };
}

/** Milliseconds that reading once what an answer goes through costs by itself. */
export function readingTime({ run, free }) {
  const end = 64 + Math.floor((free - 64) / 64) * 64;
  const began = performance.now();
  for (let n = 0; n < READINGS; n += 1) run.read(64, end);
  return (performance.now() - began) / READINGS;
}
