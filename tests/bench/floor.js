/**
 * The floor to measure the engine against: its mathematics written by hand for this machine, over
 * typed arrays, for sessions of sure answers over the whole pack. identify/core/README.md and the
 * heads of core/belief.py, core/kin.py and core/worth.py say what is worked out; nothing is kept
 * from one call to the next but the pack. floor-worth.js has the worth of a question.
 */
import { focusOf, worthOf } from "./floor-worth.js";

const FOREIGN = 0.25;
const TOGETHER = 0.5; // replaced parts that come from a piece as recorded
const RELATIVES = [0.5, 0.2, 0.2]; // siblings, twins, cousins
const STRANGERS = 0.1;
const DIFFERS = [0.1, 0.1, 0.2];
const JOINED = 0.01;
const OPEN = 0.12;
const NEW = 0.5;
const ALL_SAME = 0.999;
// what "something else" leaves of an answer: where it is recorded, on a replaced part, elsewhere
export const [RECORDED, REPLACED, BEYOND] = [0.99, 0.97, 0.9];

/**
 * The pack in typed arrays. channels: P(sure answer | state) by feature, rows by answer; wary: how
 * much relatives of each sort, and strangers, count for where a question is chosen.
 */
export function floorOf(pack, channels, wary) {
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
  const features = pack.features.map((feature, f) => featureOf(pack, channels[f], shares, f));
  const parts = pack.parts.map(({ swap }, p) => ({ swap, donors: donorsOf(pack, p, shares) }));
  const begin = Uint32Array.from([...starts, N]);
  const open = Float64Array.from(kinds, (one) => one.open ?? OPEN);
  const same = sameOf(N, features);
  return { N, K, prior, kind, begin, whole, features, parts, open, wary, same };
}

/** By sort and row: the chance that a relative would differ in nothing. */
function sameOf(N, features) {
  return RELATIVES.map((_, n) => {
    const out = new Float64Array(N).fill(1);
    for (const { codes, keeps } of features)
      for (let i = 0; i < N; i += 1) out[i] *= keeps[n][codes[i]];
    return out.map((one) => (one > ALL_SAME ? 0 : one));
  });
}

function featureOf(pack, P, shares, f) {
  const feature = pack.features[f];
  const S = P.length;
  const { none } = feature;
  const flat = (lists, of) => {
    const out = new Float64Array(lists.length * S);
    lists.forEach((one, c) => {
      for (let a = 0; a < S; a += 1)
        for (let s = 0; s < one.length; s += 1) out[c * S + a] += one[s] * of(a, s);
    });
    return out;
  };
  const strange = pack.backgrounds[f].map((usual, k) => strangeOf(feature, usual, k));
  const other = otherwise(strange, shares, feature.kinds, S);
  const off = Array.from({ length: S }, (_, a) =>
    Float64Array.from(other, (to) => to.reduce((sum, share, t) => sum + share * P[a][t], 0)),
  );
  const cells = pack.cells[f].shares;
  const rates = DIFFERS.map((usual, n) => {
    const given = feature.differs ?? [];
    return (s) => (given.length === 0 ? usual : (given[n]?.[s] ?? JOINED));
  });
  const kin = (there, away) =>
    rates.map((rate) =>
      flat(cells, (a, s) => (1 - rate(s)) * there * P[a][s] + rate(s) * away * off[a][s]),
    );
  const keeps = rates.map((rate) =>
    Float64Array.from(
      cells,
      (one) => 1 - one.reduce((most, share, s) => (share > 0 ? Math.max(most, rate(s)) : most), 0),
    ),
  );
  const plain = (a, s) => P[a][s];
  const none_of = (one) => (none >= 0 && one.length > 0 ? one[none] : 0);
  return {
    S,
    codes: Uint16Array.from(pack.cells[f].codes),
    count: cells.length,
    byCode: flat(cells, plain),
    byKind: flat(pack.backgrounds[f], plain),
    strange: flat(strange, plain),
    kin: kin(RECORDED, BEYOND), // what an answer says
    keeps,
    kinSeen: kin(1, 1), // what is likely to be answered
    noneCode: Float64Array.from(cells, none_of),
    noneKind: Float64Array.from(pack.backgrounds[f], none_of),
    lacking: Uint8Array.from(pack.kinds, (_, k) => (feature.kinds.includes(k) ? 0 : 1)),
    part: feature.part,
  };
}

/** What a stranger shows: by half the background, by half any state that is drawn. */
function strangeOf({ none, kinds }, usual, k) {
  const drawn = usual.length - (none >= 0 ? 1 : 0);
  const some = kinds.includes(k) && drawn > 0 ? NEW : 0;
  return usual.map((share, s) => (1 - some) * share + (s !== none && some > 0 ? some / drawn : 0));
}

/** What a state is where it differs: the others, as usual as they are to one another. */
function otherwise(strange, held, kinds, S) {
  const common = new Float64Array(S);
  for (const k of kinds) for (let s = 0; s < S; s += 1) common[s] += held[k] * strange[k][s];
  return Array.from({ length: S }, (_, own) => {
    const out = Float64Array.from(common, (share, s) => (s === own ? 0 : share));
    const whole = out.reduce((a, b) => a + b, 0);
    if (whole > 0) return out.map((share) => share / whole);
    return out.map((_, s) => (S === 1 ? 1 : s === own ? 0 : 1 / (S - 1)));
  });
}

function donorsOf(pack, part, shares) {
  const K = shares.length;
  const on = pack.features.filter((one) => one.part === part);
  return Array.from({ length: K }, (_, k) => {
    const wanted = on.filter((one) => one.kinds.includes(k));
    const fits = (d) =>
      d !== k && wanted.length > 0 && wanted.every((one) => one.kinds.includes(d));
    const weights = Float64Array.from(shares, (share, d) => (fits(d) ? share : 0));
    const all = weights.reduce((a, b) => a + b, 0);
    for (let d = 0; d < K; d += 1) weights[d] = all > 0 ? (FOREIGN * weights[d]) / all : 0;
    weights[k] = all > 0 ? 1 - FOREIGN : 1;
    return weights;
  });
}

/**
 * After sure answers [[feature, state]]: {chances, unrecorded: by kind, bits: [of each open
 * question, or -1]}.
 */
export function floorRun(floor, answers) {
  const { N, K, kind, begin, features, parts, wary } = floor;
  const { chances, kin, less, strangers } = beginning(floor);
  for (const [f, a] of answers) {
    const { S, codes, byCode, byKind, strange, kin: of, part } = features[f];
    if (part >= 0) continue;
    for (let i = 0; i < N; i += 1) {
      const at = codes[i] * S + a;
      const usual = REPLACED * byKind[kind[i] * S + a];
      const known = codes[i] > 0;
      chances[i] *= known ? RECORDED * byCode[at] : usual;
      for (let n = 0; n < kin.length; n += 1) kin[n][i] *= known ? of[n][at] : usual;
    }
    for (let k = 0; k < K; k += 1) strangers[k] *= BEYOND * strange[k * S + a];
  }
  const known = parts.map((part, p) => {
    const told = answers.filter(([f]) => features[f].part === p);
    const found = partOf(floor, part, told, strangers);
    const { of, factors } = found;
    [chances, ...kin].slice(0, factors.length).forEach((list, n) => {
      for (let i = 0; i < N; i += 1) list[i] *= factors[n][of[i]];
    });
    return found;
  });
  for (let n = 0; n < kin.length; n += 1)
    for (let i = 0; i < N; i += 1) kin[n][i] = Math.max(0, kin[n][i] - less[n][i] * chances[i]);
  const sum = (list) => list.reduce((a, b) => a + b, 0);
  const all = sum(chances) + kin.reduce((a, one) => a + sum(one), 0) + sum(strangers);
  for (const list of [chances, strangers, ...kin])
    for (let i = 0; i < list.length; i += 1) list[i] /= all;
  const unrecorded = strangers.slice();
  for (const one of kin) for (let i = 0; i < N; i += 1) unrecorded[kind[i]] += one[i];
  const done = new Set(answers.map(([f]) => f));
  const left = focusOf({ chances, kin, less, strangers, begin, wary });
  const bits = features.map((feature, f) =>
    done.has(f) ? -1 : worthOf(feature, floor, known, left, unrecorded),
  );
  return { chances, unrecorded, bits };
}

/** Before the first answer; and by how much less relatives are for not being the row's like. */
export function beginning({ N, K, prior, kind, whole, open, same }) {
  const chances = new Float64Array(N);
  const kin = RELATIVES.map(() => new Float64Array(N));
  const less = RELATIVES.map(() => new Float64Array(N));
  const strangers = new Float64Array(K);
  for (let i = 0; i < N; i += 1) {
    const share = prior[i] / whole;
    const beyond = share * open[kind[i]];
    chances[i] = share - beyond;
    for (let n = 0; n < kin.length; n += 1) {
      kin[n][i] = (beyond * RELATIVES[n]) / (1 - same[n][i]);
      less[n][i] = chances[i] > 0 ? (kin[n][i] * same[n][i]) / chances[i] : 0;
    }
    strangers[kind[i]] += beyond * STRANGERS;
  }
  return { chances, kin, less, strangers };
}

/**
 * What the answers on one part say, by class: the factors of its rows, of their siblings, twins and
 * cousins (none where nothing was answered), and what is left of it. Strangers are changed at once.
 */
export function partOf({ N, K, prior, kind, features }, { swap, donors }, told, strangers) {
  const every = Uint32Array.from({ length: K }, (_, k) => k);
  if (told.length === 0)
    return { of: kind, kinds: every, doubt: new Float64Array(K).fill(swap), donors, factors: [] };
  let of = kind;
  let kinds = every;
  let own = new Float64Array(K).fill(1);
  let like = RELATIVES.map(() => new Float64Array(K).fill(1));
  const any = new Float64Array(K).fill(1);
  for (const [f, a] of told) {
    const { S, codes, count, byCode, byKind, strange, kin: seen } = features[f];
    const table = new Int32Array(count * kinds.length).fill(-1);
    const next = new Uint32Array(N);
    const nextKinds = [];
    const nextOwn = [];
    const nextLike = RELATIVES.map(() => []);
    for (let i = 0; i < N; i += 1) {
      const key = codes[i] * kinds.length + of[i];
      if (table[key] < 0) {
        table[key] = nextKinds.length;
        const k = kinds[of[i]];
        const at = codes[i] * S + a;
        const usual = REPLACED * byKind[k * S + a];
        nextKinds.push(k);
        nextOwn.push(own[of[i]] * (codes[i] > 0 ? RECORDED * byCode[at] : usual));
        like.forEach((one, n) =>
          nextLike[n].push(one[of[i]] * (codes[i] > 0 ? seen[n][at] : usual)),
        );
      }
      next[i] = table[key];
    }
    [of, kinds, own, like] = [next, nextKinds, nextOwn, nextLike];
    for (let k = 0; k < K; k += 1) {
      any[k] *= REPLACED * byKind[k * S + a];
      strangers[k] *= BEYOND * strange[k * S + a];
    }
  }
  const held = new Float64Array(K);
  const mass = new Float64Array(K);
  for (let i = 0; i < N; i += 1) {
    mass[kind[i]] += prior[i];
    held[kind[i]] += prior[i] * own[of[i]];
  }
  const from = any.map(
    (singly, k) => (1 - TOGETHER) * singly + TOGETHER * (mass[k] > 0 ? held[k] / mass[k] : singly),
  );
  const spare = donors.map((row) => row.reduce((sum, w, d) => sum + w * from[d], 0));
  const sharp = donors.map((row, k) =>
    row.map((w, d) => (spare[k] > 0 ? (w * from[d]) / spare[k] : w)),
  );
  const taken = (list) =>
    Float64Array.from(list, (one, c) => (1 - swap) * one + swap * spare[kinds[c]]);
  const factors = [own, ...like].map(taken);
  const doubt = factors[0].map((all, c) => (all > 0 ? (swap * spare[kinds[c]]) / all : 0));
  return { of, kinds, doubt, donors: sharp, factors };
}
