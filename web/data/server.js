import { ANSWER_NOT_READ, SERVER_NOT_REACHED, serverGaveError } from "./words.js";

/** The server that the app came from, where there is more to it than files. */
const at = (path) => new URL(`../api/${path}`, import.meta.url);
const NOTHING = { sync: false, name: "", proposals: "" };
const LONGEST = 60_000;
let offered = null;
let token = "";

/**
 * Why the server did not do it, in a sentence. `status`: of HTTP; 0 when it could not be reached.
 */
export class Refused extends Error {
  constructor(message, status, body = {}, wait = 0) {
    super(message);
    this.status = status;
    this.body = body;
    this.wait = wait; // seconds that the server asks to wait
  }
}

/** What this device is known by to the server from here on; "" for nothing. */
export function useToken(text) {
  token = text;
}

/**
 * What the server can do besides: {sync, name, proposals}; nothing on a plain host. Asked once a
 * start, and only when something of it is wanted: a plain host has no such address.
 */
export function offers() {
  offered ??= ask("offers").then(
    (offer) => ({ ...NOTHING, ...offer }),
    ({ status }) => {
      if (status === 0) offered = null;
      return NOTHING;
    },
  );
  return offered;
}

/** One request; gives the JSON of the answer. Throws Refused. */
export async function ask(path, options = {}) {
  const response = await send(path, options);
  try {
    return await response.json();
  } catch {
    throw new Refused(ANSWER_NOT_READ, response.status);
  }
}

/** One request; gives the answer as it is. Throws Refused. */
export async function send(path, options = {}) {
  const headers = { ...options.headers, ...(token && { Authorization: `Bearer ${token}` }) };
  const signal = AbortSignal.timeout?.(LONGEST);
  let response;
  try {
    response = await fetch(at(path), { cache: "no-store", signal, ...options, headers });
  } catch {
    throw new Refused(SERVER_NOT_REACHED, 0);
  }
  if (response.ok) return response;
  const body = await response.json().catch(() => ({}));
  const wait = Number(response.headers.get("Retry-After")) || 0;
  const said = body.error ?? serverGaveError(response.status);
  throw new Refused(said, response.status, body, wait);
}

/** Sends a value as JSON. */
export function post(path, value) {
  const headers = { "Content-Type": "application/json" };
  return ask(path, { method: "POST", headers, body: JSON.stringify(value) });
}
