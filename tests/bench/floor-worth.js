/** The floor's other half: which rows still count, and the bits that a question is expected to tell. */
const LN2 = Math.log(2);
export const LEFT_OUT = 1e-5;
export const KIN_LEFT_OUT = 1e-3;
export const SHRINK = Array.from({ length: 13 }, (_, n) => 0.03 * 0.3 ** n).filter((x) => x > 1e-8);
const h = (p) => (p > 0 ? (-p * Math.log(p)) / LN2 : 0);
const sum = (list) => list.reduce((a, b) => a + b, 0);
const mix = (weights, by) => weights.map((row) => row.reduce((all, w, d) => all + w * by[d], 0));

function faint(chances, most) {
  let best = 0;
  for (let i = 0; i < chances.length; i += 1) if (chances[i] > best) best = chances[i];
  const lost = new Float64Array(SHRINK.length);
  for (let i = 0; i < chances.length; i += 1)
    for (let n = 0; n < SHRINK.length && chances[i] < best * SHRINK[n]; n += 1)
      lost[n] += chances[i];
  const n = lost.findIndex((one) => one <= most);
  return n < 0 ? 0 : best * SHRINK[n];
}

/** The rows that still count, the variants they are of, the chance of each, and the relatives. */
export function focusOf({ chances, kin, less, strangers, begin, wary }) {
  const least = faint(chances, LEFT_OUT);
  const rows = new Uint32Array(chances.length);
  const weights = new Float64Array(chances.length);
  const starts = new Uint32Array(begin.length);
  const chance = new Float64Array(begin.length);
  let count = 0;
  let outcomes = 0;
  for (let v = 0; v + 1 < begin.length; v += 1) {
    const start = count;
    for (let i = begin[v]; i < begin[v + 1]; i += 1) {
      if (chances[i] >= least && chances[i] > 0) {
        rows[count] = i;
        weights[count] = chances[i];
        chance[outcomes] += chances[i];
        count += 1;
      }
    }
    if (count > start) {
      starts[outcomes] = start;
      outcomes += 1;
    }
  }
  starts[outcomes] = count;
  const together = new Float64Array(chances.length);
  for (let i = 0; i < chances.length; i += 1)
    together[i] = wary[0] * kin[0][i] + wary[1] * kin[1][i] + wary[2] * kin[2][i];
  const enough = faint(together, KIN_LEFT_OUT);
  const near = [];
  for (let i = 0; i < together.length; i += 1)
    if (together[i] >= enough && together[i] > 0) near.push(i);
  const same = new Float64Array(near.length);
  const sorts = kin.map((one, n) =>
    Float64Array.from(near, (i, m) => {
      const alike = wary[n] * less[n][i] * chances[i];
      same[m] += alike;
      return wary[n] * one[i] + alike;
    }),
  );
  const alien = strangers.map((one) => wary[3] * one);
  return {
    whole: sum(chance.subarray(0, outcomes)),
    rows,
    weights,
    starts,
    chance,
    outcomes,
    near: Uint32Array.from(near),
    sorts,
    same,
    related: sum(together),
    alien,
  };
}

/** What classes hold of one question, row by row: floor-simd.js has another. */
const talliesOf = (codes) => ({
  /** What each class holds of the variants that are of one class; the places of the others. */
  variants(of, width, count, { rows, starts, chance, outcomes }) {
    const held = new Float64Array(count * width);
    const mixed = [];
    for (let o = 0; o < outcomes; o += 1) {
      const to = starts[o + 1];
      let n = starts[o];
      const c = codes[rows[n]] * width + of[rows[n]];
      n += 1;
      while (n < to && codes[rows[n]] * width + of[rows[n]] === c) n += 1;
      if (n === to) held[c] += chance[o];
      else mixed.push(o);
    }
    return { held, mixed };
  },
  /** By class four numbers: relatives that would differ in nothing, and each sort with those. */
  relatives(of, width, count, { near, sorts, same }) {
    const held = new Float64Array(count * width * 4);
    for (let n = 0; n < near.length; n += 1) {
      const c = 4 * (codes[near[n]] * width + of[near[n]]);
      held[c] += same[n];
      for (let m = 0; m < sorts.length; m += 1) held[c + 1 + m] += sorts[m][n];
    }
    return held;
  },
});

/** Bits that one question is expected to tell about the variant; -1: likelier absent than there. */
export function worthOf(
  feature,
  { K, kind },
  known,
  left,
  unrecorded,
  tallies = talliesOf(feature.codes),
) {
  const { rows, weights, starts, chance } = left;
  const { S, codes, count, byCode, byKind, part, noneCode, noneKind, lacking } = feature;
  const every = Array.from({ length: K }, (_, k) => k);
  const on =
    part >= 0 ? known[part] : { of: kind, kinds: every, doubt: new Float64Array(K), donors: null };
  const { of, kinds, doubt, donors } = on;
  const width = kinds.length;
  const spareNone = donors ? mix(donors, noneKind) : noneKind;
  const spares = new Float64Array(K * S);
  for (let a = 0; a < S; a += 1) {
    const by = Array.from({ length: K }, (_, k) => byKind[k * S + a]);
    (donors ? mix(donors, by) : by).forEach((value, k) => (spares[k * S + a] = value));
  }
  const { held, mixed } = tallies.variants(of, width, count, left);
  const views = new Float64Array(count * width * S);
  const gone = new Float64Array(count * width).fill(-1);
  const answer = new Float64Array(S);
  const one = new Float64Array(S);
  let inside = 0;
  let absent = 0;
  let { whole } = left;
  const make = (c) => {
    if (gone[c] >= 0) return;
    const code = Math.floor(c / width);
    const k = kinds[c - code * width];
    const q = doubt[c - code * width];
    for (let a = 0; a < S; a += 1)
      views[c * S + a] =
        (1 - q) * (code > 0 ? byCode[code * S + a] : byKind[k * S + a]) + q * spares[k * S + a];
    gone[c] = lacking[k] ? 1 : code > 0 ? (1 - q) * noneCode[code] + q * spareNone[k] : noneKind[k];
  };
  for (const o of mixed) {
    one.fill(0);
    for (let n = starts[o]; n < starts[o + 1]; n += 1) {
      const d = codes[rows[n]] * width + of[rows[n]];
      make(d);
      absent += weights[n] * gone[d];
      for (let a = 0; a < S; a += 1) one[a] += weights[n] * views[d * S + a];
    }
    inside -= h(chance[o]);
    for (let a = 0; a < S; a += 1) {
      answer[a] += one[a];
      inside += h(one[a]);
    }
  }
  for (let c = 0; c < held.length; c += 1) {
    if (held[c] === 0) continue;
    make(c);
    absent += held[c] * gone[c];
    for (let a = 0; a < S; a += 1) {
      answer[a] += held[c] * views[c * S + a];
      inside += held[c] * h(views[c * S + a]);
    }
  }
  for (let k = 0; k < K; k += 1) absent += unrecorded[k] * Math.max(lacking[k], noneKind[k]);
  one.fill(0);
  const related = tallies.relatives(of, width, count, left);
  const beyond = beyondView(feature, on, spares, left, related, one);
  whole += beyond;
  inside -= h(beyond);
  for (let a = 0; a < S; a += 1) {
    answer[a] += one[a];
    inside += h(one[a]);
  }
  let bits = -inside / whole;
  for (let a = 0; a < S; a += 1) bits += h(answer[a] / whole);
  return absent > 0.5 ? -1 : bits;
}

/** Adds P(in no range, answer) to `out`; returns P(in no range). */
function beyondView({ S, byCode, byKind, strange, kinSeen }, on, spares, left, held, out) {
  const { related, alien } = left;
  const { kinds, doubt } = on;
  const [first, second, third] = kinSeen;
  const width = kinds.length;
  for (let c = 0; 4 * c < held.length; c += 1) {
    const [alike, one, two, three] = [
      held[4 * c],
      held[4 * c + 1],
      held[4 * c + 2],
      held[4 * c + 3],
    ];
    const all = one + two + three - alike;
    if (all <= 0) continue;
    const code = Math.floor(c / width);
    const k = kinds[c - code * width];
    const q = doubt[c - code * width];
    for (let a = 0; a < S; a += 1) {
      const at = code * S + a;
      const own =
        code > 0
          ? one * first[at] + two * second[at] + three * third[at] - alike * byCode[at]
          : all * byKind[k * S + a];
      out[a] += Math.max(0, (1 - q) * own + q * all * spares[k * S + a]);
    }
  }
  const counted = sum(out);
  for (let a = 0; a < S; a += 1) {
    out[a] *= counted > 0 ? related / counted : 0;
    for (let k = 0; k < alien.length; k += 1) out[a] += alien[k] * strange[k * S + a];
  }
  return related + sum(alien);
}
