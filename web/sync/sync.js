/**
 * Keeps this phone and the collector's own server at one: what was changed here goes there, what
 * was
 * changed elsewhere comes here. Nothing waits for it: every tap is stored here first.
 */
import { putAside } from "../data/aside.js";
import { loadFurther } from "../data/engine.js";
import { everything, onWritten, reread } from "../data/records.js";
import { Refused, ask, post, useToken } from "../data/server.js";
import { StorageLost } from "../data/storage-connection.js";
import { read } from "../data/store.js";
import { fetchPhotos, photosWaiting, sendPhotos, tellOfPhotos } from "./photo-transfer.js";
import { fork } from "./renaming.js";
import { seal } from "./sealing.js";
import { NotStored, markNow, readState, setState } from "./sync-state.js";
import { pageNow, takeIn } from "./taking-in.js";
import { leaveOut, operations, unsent, withinReach } from "./to-send.js";
import { wipe } from "./wiping.js";
import {
  ANSWER_NOT_READ,
  DEVICE_NOT_KNOWN,
  NO_SIGNAL,
  SENDING_WENT_WRONG,
  SERVER_NOT_REACHED,
} from "./words.js";

const SOON = 1000; // after a change
const GLANCE = 8000; // while the app is in view: is there something new?
const BESIDE = 4000; // when another window is at it
const AGAIN = 5 * 60_000; // a whole round, while the app is in view
const FIRST_WAIT = 5000; // after a failure, doubled each time
const LONGEST_WAIT = 15 * 60_000;
const LONGEST_ASKED = 24 * 3600_000; // a timer holds no more than 24 days
const PUSHED = 200;
const BYTES = 1_000_000;
const REFUSED = [400, 413, 422];
const OWN = [Refused, NotStored, StorageLost]; // each is a sentence for the person

const heard = [];
let started = false;
let timer = null; // of the next round
let due = 0; // when that is
let glancing = null; // the timer of the next glance
let running = null;
let wanted = ""; // "round", "glance" or ""
let failures = 0;
let unreached = false; // whether the last failure was that the server could not be reached
let asked = 0; // until when the server asks to be left alone
let glanced = ""; // when the server last answered a glance
let checked = false; // whether the server was asked for every photo since the start
let state = {
  doing: "", // "", "looking", "sending", "photos there", "photos here"
  done: 0,
  total: 0,
  problem: "",
  refused: [], // {id, why}: what the server does not take
  lost: false, // the server does not know this device any more
};

/** What is being done: {doing, done, total, problem, refused, lost}. */
export function syncState() {
  return state;
}

/** Calls `act` with that whenever it changes. */
export function onSync(act) {
  heard.push(act);
}

function tell(change) {
  state = { ...state, ...change };
  for (const act of heard) act(state);
}

/** What is known of the pairing: {token, id, name} or null. */
export async function paired() {
  return (await read("kept", "paired")) ?? null;
}

/** What waits: {entries, sending, fetching: photos, touched: time of the last round, or ""}. */
export async function waiting() {
  const [{ touched }, mark] = await Promise.all([readState(), markNow()]);
  const [keys, photos] = await Promise.all([unsent(mark), photosWaiting(mark)]);
  return { entries: keys.length, ...photos, touched: glanced > touched ? glanced : touched };
}

/** Begins to keep this phone and the server at one, if it is paired. */
export async function startSync() {
  const pairing = await paired();
  if (!pairing) return;
  useToken(pairing.token);
  if (!started) {
    started = true;
    onWritten(() => soon(SOON, unreached));
    window.addEventListener("online", () => {
      failures = 0;
      soon(0);
    });
    document.addEventListener("visibilitychange", comesOrGoes);
  }
  soon(0);
}

const inView = () => document.visibilityState === "visible";

/** In view again, all is looked at; out of view only what was just changed is still sent. */
function comesOrGoes() {
  clearTimeout(glancing);
  if (inView()) soon(0, unreached);
  else if (timer !== null && due - Date.now() <= SOON) soon(0);
}

/**
 * One round after this many milliseconds, or before if one is due before; after failures not before
 * it is time again, unless it is to be tried `anyway`; and never while the server asks to wait.
 */
function soon(delay, anyway = false) {
  const waits = failures > 0 && !anyway;
  const wait = waits ? Math.min(FIRST_WAIT * 2 ** (failures - 1), LONGEST_WAIT) : 0;
  const at = Math.max(Date.now() + Math.max(delay, wait), asked);
  if (timer !== null && due <= at) return;
  clearTimeout(timer);
  due = at;
  timer = setTimeout(sync, at - Date.now());
}

function noneDue() {
  clearTimeout(timer);
  timer = null;
}

/** Another round and glances, as long as somebody looks at the app: else no battery is spent. */
function goOn() {
  clearTimeout(glancing);
  if (!inView()) return;
  soon(AGAIN);
  glancing = setTimeout(glance, GLANCE);
}

/** One round now, or one more after the one under way. Resolves when it is done; never rejects. */
export function sync() {
  noneDue();
  wanted = "round";
  tell({ doing: state.doing || "looking" });
  return begin();
}

function glance() {
  wanted ||= "glance";
  begin();
}

function begin() {
  running ??= rounds().finally(() => {
    running = null;
  });
  return running;
}

async function rounds() {
  while (wanted !== "") {
    const act = wanted === "round" ? once : lookOnce;
    wanted = "";
    await alone(act).catch(failed);
  }
}

/** One window at a time, where the browser can tell. */
function alone(act) {
  if (!navigator.locks) return act();
  return navigator.locks.request("identify sync", { ifAvailable: true }, (lock) =>
    lock ? act() : elsewhere(),
  );
}

/** Another window is at it, and tells this one what changed. */
function elsewhere() {
  tell({ doing: "" });
  soon(BESIDE);
}

/** Asks for what is new: one small question, and a round only if there is something. */
async function lookOnce() {
  if (!(await paired())) return;
  try {
    if (await pull()) wanted = "round";
    glanced = new Date().toISOString();
    goOn();
  } catch (error) {
    await failed(error);
  }
}

async function once() {
  const pairing = await paired();
  if (!pairing) {
    tell({ doing: "" });
    return;
  }
  useToken(pairing.token);
  try {
    tell({ doing: "looking", done: 0, total: 0, problem: "", refused: [], lost: false });
    await round();
    failures = asked = 0;
    await setState({ touched: new Date().toISOString() });
    tell({ doing: wanted === "round" ? "looking" : "" }); // one more may have been asked for
    goOn();
  } catch (error) {
    await failed(error);
  }
}

async function failed(error) {
  failures += 1;
  wanted = ""; // what came meanwhile goes with the next round, when it is time
  unreached = error.status === 0;
  clearTimeout(glancing);
  if (error instanceof Refused && error.status === 403 && error.body.revoked) {
    await wipe();
    return;
  }
  if (!OWN.some((sort) => error instanceof sort)) console.error(error);
  tell({ doing: "", problem: sentence(error), lost: error.status === 401 });
  if (error.status === 401) return; // only pairing anew helps
  asked = error.wait ? Date.now() + Math.min(error.wait * 1000, LONGEST_ASKED) : 0;
  noneDue();
  soon(0);
}

function sentence(error) {
  if (error.status === 401) return DEVICE_NOT_KNOWN;
  if (error.status === 0) return SERVER_NOT_REACHED;
  if (OWN.some((sort) => error instanceof sort)) return error.message;
  return SENDING_WENT_WRONG;
}

async function round() {
  await sealAll();
  if (!navigator.onLine) throw new Refused(NO_SIGNAL, 0);
  await pull();
  for (let tries = 0; tries < 4 && !(await push()); tries += 1);
  const mark = await markNow();
  const there = (done, total) => tell({ doing: "photos there", done, total });
  const refused = await sendPhotos(mark, checked, there);
  tell({ refused: [...state.refused, ...refused] });
  checked = true;
  const came = await fetchPhotos(mark, (done, total) =>
    tell({ doing: "photos here", done, total }),
  );
  await showPhotos(came);
}

/** Makes operations of what was changed here, photos too. */
export async function sealAll() {
  await reread(await seal());
  const shown = new Set(
    everything()
      .filter((entry) => !entry.gone)
      .flatMap((entry) => entry.photos ?? []),
  );
  await tellOfPhotos(shown);
  await reread(await seal());
}

/**
 * Takes in what the server has; screens hear of it once it is all here, or as far as it came. Gives
 * whether there was anything. The next page is on its way while one is taken in.
 */
async function pull() {
  const changed = new Set();
  let any = false;
  let [coming, next] = [null, ""];
  try {
    for (let more = true; more;) {
      const { epoch, after, last } = await readState();
      const place = placeOf({ epoch, after, last });
      const answer = await sound(await (place === next ? coming : pageAt(place)));
      const news = answer.came > 0 || answer.from_start || answer.epoch !== epoch;
      if (!news && answer.after === after) return any; // nothing to write on the disk
      any = true;
      next = answer.more ? placeOf(answer) : "";
      if (next) coming = pageAt(next);
      coming?.catch(() => {}); // told when it is its turn
      const { touched, again } = await takeIn(answer, { epoch, after, last });
      for (const id of touched) changed.add(id);
      more = answer.more || again;
    }
  } finally {
    await reread([...changed]);
  }
  return any;
}

/** The answer with nothing but operations that fit through the gate; the others are set aside. */
async function sound(answer) {
  if (!Array.isArray(answer.ops)) throw new Refused(ANSWER_NOT_READ, 0);
  const { operation_fault, fault_words } = await loadFurther();
  const bad = [];
  const ops = answer.ops.filter((value, place) => {
    const fault = operation_fault(value, true);
    const id = typeof value?.id === "string" ? value.id.slice(0, 40) : `${answer.after} ${place}`;
    if (fault) bad.push({ id, value, why: fault_words(fault) });
    return !fault;
  });
  if (bad.length > 0) await putAside("server", bad);
  return { ...answer, ops, came: answer.ops.length };
}

/** A place of the server's order, as it is asked for. */
function placeOf({ epoch, after, last }) {
  return new URLSearchParams({ epoch, after, last }).toString();
}

/** What comes after it, as much as is taken in at once. */
function pageAt(place) {
  return ask(`pull?${place}&limit=${pageNow()}`);
}

/**
 * Sends what this server does not hold yet; false when it has to be begun anew. What was sent
 * counts
 * as held only once the server hands it out again: then it stands where no older copy of the
 * server's
 * data can pass for the present one.
 */
async function push() {
  const mark = await markNow();
  const keys = await unsent(mark);
  const refused = [];
  let done = 0;
  while (done < keys.length) {
    tell({ doing: "sending", done, total: keys.length });
    const { ops, wrong, count } = await batch(keys.slice(done, done + PUSHED));
    const answer = ops.length > 0 ? await pushed(ops) : { forked: [], refused: [] };
    const left = [...wrong, ...answer.refused];
    if (left.length > 0) await leaveOut(left, mark);
    if (answer.forked.length > 0) {
      await reread(await fork(answer.forked));
      return false;
    }
    refused.push(...left);
    await pull();
    if ((await markNow()) !== mark) return false;
    done += count;
  }
  tell({ refused });
  return true;
}

/**
 * The operations at these places of the journal, as many as make a message of sensible size: {ops,
 * wrong: [{id, why}] (what does not fit through the gate), count: of places}.
 */
async function batch(keys) {
  const { operation_fault, fault_words } = await loadFurther();
  const [ops, wrong] = [[], []];
  let [bytes, count] = [0, 0];
  for (let operation of await operations(keys)) {
    let fault = operation && operation_fault(operation, false);
    if (fault?.why === "clock") {
      operation = (await withinReach(operation.id)) ?? operation;
      fault = operation_fault(operation, false);
    }
    if (fault) wrong.push({ id: operation.id, why: fault_words(fault) });
    else if (operation) {
      bytes += new Blob([JSON.stringify(operation)]).size;
      if (ops.length > 0 && bytes > BYTES) break;
      ops.push(operation);
    }
    count += 1;
  }
  return { ops, wrong, count };
}

/** The server's answer to these operations. One that it cannot take does not hold up the others. */
async function pushed(ops) {
  try {
    return await post("push", { ops });
  } catch (error) {
    if (!(error instanceof Refused) || !REFUSED.includes(error.status)) throw error;
    if (ops.length === 1) return { forked: [], refused: [{ id: ops[0].id, why: error.message }] };
    const middle = Math.ceil(ops.length / 2);
    const former = await pushed(ops.slice(0, middle));
    const latter = await pushed(ops.slice(middle));
    return {
      forked: [...former.forked, ...latter.forked],
      refused: [...former.refused, ...latter.refused],
    };
  }
}

/** Draws screens anew that show photos which have come. */
async function showPhotos(came) {
  if (came.length === 0) return;
  const ids = new Set(came);
  const showing = everything().filter((entry) => (entry.photos ?? []).some((id) => ids.has(id)));
  await reread(showing.map(({ id }) => id));
}
