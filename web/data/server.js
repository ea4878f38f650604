/** The server that the app came from, where there is more to it than files. */
const at = (path) => new URL(`../api/${path}`, import.meta.url);
const NOTHING = { sync: false, exchange: false, editor: false, name: "" };

/** Why the server did not do it, in a sentence. `status`: of HTTP; 0 when it could not be reached. */
export class Refused extends Error {
  constructor(message, status, body = {}) {
    super(message);
    this.status = status;
    this.body = body;
  }
}

/** What the server can do besides: {sync, exchange, editor, name}; nothing on a plain host. */
export async function offers() {
  try {
    return { ...NOTHING, ...(await ask("offers")) };
  } catch {
    return NOTHING;
  }
}

/** One request; gives the JSON of the answer. Throws Refused. */
export async function ask(path, options = {}) {
  const response = await send(path, options);
  try {
    return await response.json();
  } catch {
    throw new Refused("The server’s answer cannot be read.", response.status);
  }
}

/** One request; gives the answer as it is. Throws Refused. */
export async function send(path, options = {}) {
  let response;
  try {
    response = await fetch(at(path), { cache: "no-store", ...options });
  } catch {
    throw new Refused("The server cannot be reached. Try again where there is a signal.", 0);
  }
  if (response.ok) return response;
  const body = await response.json().catch(() => ({}));
  throw new Refused(body.error ?? `The server answered ${response.status}.`, response.status, body);
}

/** Sends a value as JSON. */
export function post(path, value) {
  const headers = { "Content-Type": "application/json" };
  return ask(path, { method: "POST", headers, body: JSON.stringify(value) });
}
