/**
 * The floor to measure the engine against: its mathematics written by hand for this machine, over
 * typed arrays, for sessions of sure answers over the whole pack. identify/core/README.md and the
 * heads of core/belief.py and core/asking.py say what is worked out; nothing is kept from one
 * call to the next but the pack.
 */
const LN2 = Math.log(2);
const UNRECORDED = 0.02;
const FOREIGN = 0.25;
const LEFT_OUT = 1e-5;
const SHRINK = Array.from({ length: 13 }, (_, n) => 0.03 * 0.3 ** n).filter((x) => x > 1e-8);
const h = (p) => (p > 0 ? (-p * Math.log(p)) / LN2 : 0);

/** The pack in typed arrays. channels: P(sure answer | state) by feature, rows by answer. */
export function floorOf(pack, channels) {
  const { rows, kinds } = pack;
  const N = rows.kind.length;
  const K = kinds.length;
  const prior = Float64Array.from(rows.prior);
  const kind = Uint8Array.from(rows.kind);
  const variant = Uint32Array.from(rows.variant);
  const starts = [];
  for (let i = 0; i < N; i += 1) if (i === 0 || variant[i] !== variant[i - 1]) starts.push(i);
  const shares = new Float64Array(K);
  let whole = 0;
  for (let i = 0; i < N; i += 1) {
    whole += prior[i];
    shares[kind[i]] += prior[i];
  }
  const features = pack.features.map((feature, f) => {
    const P = channels[f];
    const S = P.length;
    const seen = (list) => {
      const flat = new Float64Array(list.length * S);
      list.forEach((one, c) => {
        for (let a = 0; a < S; a += 1)
          for (let s = 0; s < one.length; s += 1) flat[c * S + a] += one[s] * P[a][s];
      });
      return flat;
    };
    const none = feature.none;
    const none_of = (one) => (none >= 0 && one.length > 0 ? one[none] : 0);
    return {
      S,
      codes: Uint16Array.from(pack.cells[f].codes),
      count: pack.cells[f].shares.length,
      byCode: seen(pack.cells[f].shares),
      byKind: seen(pack.backgrounds[f]),
      noneCode: Float64Array.from(pack.cells[f].shares, none_of),
      noneKind: Float64Array.from(pack.backgrounds[f], none_of),
      lacking: Uint8Array.from(kinds, (_, k) => (feature.kinds.includes(k) ? 0 : 1)),
      part: feature.part,
      seconds: feature.seconds,
    };
  });
  const parts = pack.parts.map(({ swap }, p) => ({ swap, donors: donorsOf(pack, p, shares) }));
  const begin = Uint32Array.from([...starts, N]);
  return { N, K, prior, kind, begin, whole, features, parts, shares };
}

function donorsOf(pack, part, shares) {
  const K = shares.length;
  const on = pack.features.filter((one) => one.part === part);
  return Array.from({ length: K }, (_, k) => {
    const wanted = on.filter((one) => one.kinds.includes(k));
    const fits = (d) => d !== k && wanted.length > 0 && wanted.every((one) => one.kinds.includes(d));
    const weights = Float64Array.from(shares, (share, d) => (fits(d) ? share : 0));
    const all = weights.reduce((a, b) => a + b, 0);
    for (let d = 0; d < K; d += 1) weights[d] = all > 0 ? (FOREIGN * weights[d]) / all : 0;
    weights[k] = all > 0 ? 1 - FOREIGN : 1;
    return weights;
  });
}

/** After sure answers [[feature, state]]: {chances, unrecorded, bits: [of each open question, or -1]}. */
export function floorRun(floor, answers) {
  const { N, K, prior, kind, begin, whole, features, parts, shares } = floor;
  const chances = new Float64Array(N);
  const beyond = new Float64Array(K);
  for (let i = 0; i < N; i += 1) chances[i] = (prior[i] / whole) * (1 - UNRECORDED);
  for (let k = 0; k < K; k += 1) beyond[k] = (shares[k] / whole) * UNRECORDED;
  for (const [f, a] of answers) {
    const { S, codes, byCode, byKind, part } = features[f];
    if (part >= 0) continue;
    for (let i = 0; i < N; i += 1) {
      const code = codes[i];
      chances[i] *= code > 0 ? byCode[code * S + a] : byKind[kind[i] * S + a];
    }
    for (let k = 0; k < K; k += 1) beyond[k] *= byKind[k * S + a];
  }
  const known = parts.map(({ swap, donors }, p) => {
    const told = answers.filter(([f]) => features[f].part === p);
    if (told.length === 0) {
      return { of: kind, kinds: kind_list(K), doubt: new Float64Array(K).fill(swap), donors, told: 0 };
    }
    let of = kind;
    let kinds = kind_list(K);
    let own = new Float64Array(K).fill(1);
    const any = new Float64Array(K).fill(1);
    for (const [f, a] of told) {
      const { S, codes, count, byCode, byKind } = features[f];
      const table = new Int32Array(count * kinds.length).fill(-1);
      const next = new Uint32Array(N);
      const nextKinds = [];
      const nextOwn = [];
      for (let i = 0; i < N; i += 1) {
        const key = codes[i] * kinds.length + of[i];
        if (table[key] < 0) {
          table[key] = nextKinds.length;
          const k = kinds[of[i]];
          nextKinds.push(k);
          nextOwn.push(own[of[i]] * (codes[i] > 0 ? byCode[codes[i] * S + a] : byKind[k * S + a]));
        }
        next[i] = table[key];
      }
      of = next;
      kinds = nextKinds;
      own = nextOwn;
      for (let k = 0; k < K; k += 1) any[k] *= byKind[k * S + a];
    }
    const spare = mix(donors, any);
    const sharp = donors.map((row, k) => row.map((w, d) => (spare[k] > 0 ? (w * any[d]) / spare[k] : w)));
    const factor = Float64Array.from(own, (one, c) => (1 - swap) * one + swap * spare[kinds[c]]);
    const doubt = Float64Array.from(factor, (all, c) => (all > 0 ? (swap * spare[kinds[c]]) / all : 0));
    for (let i = 0; i < N; i += 1) chances[i] *= factor[of[i]];
    for (let k = 0; k < K; k += 1) beyond[k] *= any[k];
    return { of, kinds, doubt, donors: sharp, told: told.length };
  });
  let all = 0;
  let best = 0;
  for (let i = 0; i < N; i += 1) all += chances[i];
  for (let k = 0; k < K; k += 1) all += beyond[k];
  for (let i = 0; i < N; i += 1) {
    chances[i] /= all;
    if (chances[i] > best) best = chances[i];
  }
  for (let k = 0; k < K; k += 1) beyond[k] /= all;
  const done = new Set(answers.map(([f]) => f));
  const left = focusOf(chances, begin, best);
  const bits = features.map((feature, f) => (done.has(f) ? -1 : worthOf(feature, floor, known, left, beyond)));
  return { chances, unrecorded: beyond, bits };
}

const kind_list = (K) => Array.from({ length: K }, (_, k) => k);
const mix = (weights, by) => weights.map((row) => row.reduce((sum, w, d) => sum + w * by[d], 0));

/** The rows that still count, the variants they are of, and the chance of each of those. */
function focusOf(chances, begin, best) {
  const lost = new Float64Array(SHRINK.length);
  for (let i = 0; i < chances.length; i += 1)
    for (let n = 0; n < SHRINK.length && chances[i] < best * SHRINK[n]; n += 1) lost[n] += chances[i];
  const n = lost.findIndex((one) => one <= LEFT_OUT);
  const least = n < 0 ? 0 : best * SHRINK[n];
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
  return { rows, weights, starts, chance, outcomes };
}

/** Bits that one question is expected to tell about the variant; -1: likelier absent than there. */
function worthOf(feature, { K, kind }, known, { rows, weights, starts, chance, outcomes }, beyond) {
  const { S, codes, count, byCode, byKind, part, noneCode, noneKind, lacking } = feature;
  const on = part >= 0 ? known[part] : { of: kind, kinds: kind_list(K), doubt: new Float64Array(K), donors: null };
  const { of, kinds, doubt, donors } = on;
  const width = kinds.length;
  const spareNone = donors ? mix(donors, noneKind) : noneKind;
  const spares = new Float64Array(K * S);
  for (let a = 0; a < S; a += 1) {
    const by = Array.from({ length: K }, (_, k) => byKind[k * S + a]);
    (donors ? mix(donors, by) : by).forEach((value, k) => (spares[k * S + a] = value));
  }
  const held = new Float64Array(count * width);
  const views = new Float64Array(count * width * S);
  const gone = new Float64Array(count * width).fill(-1);
  const answer = new Float64Array(S);
  const one = new Float64Array(S);
  let inside = 0;
  let absent = 0;
  let whole = 0;
  const make = (c) => {
    if (gone[c] >= 0) return;
    const code = Math.floor(c / width);
    const k = kinds[c - code * width];
    const q = doubt[c - code * width];
    for (let a = 0; a < S; a += 1)
      views[c * S + a] = (1 - q) * (code > 0 ? byCode[code * S + a] : byKind[k * S + a]) + q * spares[k * S + a];
    gone[c] = lacking[k] ? 1 : code > 0 ? (1 - q) * noneCode[code] + q * spareNone[k] : noneKind[k];
  };
  for (let o = 0; o < outcomes; o += 1) {
    const from = starts[o];
    const to = starts[o + 1];
    const c = codes[rows[from]] * width + of[rows[from]];
    let n = from + 1;
    while (n < to && codes[rows[n]] * width + of[rows[n]] === c) n += 1;
    whole += chance[o];
    if (n === to) {
      held[c] += chance[o];
      continue;
    }
    one.fill(0);
    for (n = from; n < to; n += 1) {
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
  one.fill(0);
  let unrecorded = 0;
  for (let k = 0; k < K; k += 1) {
    unrecorded += beyond[k];
    absent += beyond[k] * Math.max(lacking[k], noneKind[k]);
    for (let a = 0; a < S; a += 1) one[a] += beyond[k] * byKind[k * S + a];
  }
  whole += unrecorded;
  inside -= h(unrecorded);
  for (let a = 0; a < S; a += 1) {
    answer[a] += one[a];
    inside += h(one[a]);
  }
  let bits = -inside / whole;
  for (let a = 0; a < S; a += 1) bits += h(answer[a] / whole);
  return absent > 0.5 ? -1 : bits;
}
