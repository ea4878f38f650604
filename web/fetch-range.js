/**
 * Fetches a range from another host, in a thread of its own: the only script of the app that may
 * speak to one (its content security policy is apart, identify/server/README.md). It is told
 * {address, most: bytes}, sends nothing but the request for that address, without cookies and
 * without saying who asks, and answers {text, dated: since when it lies there, by its host} or
 * {problem, status}:
 *
 *   address    it is no https address, nor one of the app's own host
 *   no answer  nothing could be reached there, or nothing that wants to be
 *   closed     something answers, but lets no other pages read it
 *   status     it answered with an error, `status`
 *   large      more than `most`
 *   cut        it ended before it was whole
 *   slow       nothing came for a while
 */
const PATIENCE = 20_000; // milliseconds without a byte

addEventListener("message", async ({ data }) => postMessage(await fetched(data)));

async function fetched({ address, most }) {
  const url = allowed(address);
  if (!url) return { problem: "address" };
  const quiet = new AbortController();
  let timer = 0;
  const wait = () => {
    clearTimeout(timer);
    timer = setTimeout(() => quiet.abort("slow"), PATIENCE);
  };
  wait();
  let response;
  try {
    response = await fetch(url, { ...bare, cache: "no-cache", signal: quiet.signal });
  } catch {
    if (quiet.signal.aborted) return { problem: "slow" };
    return { problem: (await isThere(url)) ? "closed" : "no answer" };
  }
  if (!response.ok) return { problem: "status", status: response.status };
  if (Number(response.headers.get("Content-Length")) > most) return { problem: "large" };
  try {
    const dated = response.headers.get("Last-Modified") ?? "";
    return { dated, ...(await whole(response, most, wait)) };
  } catch {
    return { problem: quiet.signal.aborted ? "slow" : "cut" };
  } finally {
    clearTimeout(timer);
  }
}

const bare = { credentials: "omit", referrerPolicy: "no-referrer" };

/** The address as a URL; null where it is none that may be asked. */
function allowed(address) {
  let url;
  try {
    url = new URL(address);
  } catch {
    return null;
  }
  if (url.username !== "" || url.password !== "") return null;
  return url.protocol === "https:" || url.origin === location.origin ? url : null;
}

/** Does anything answer there at all? What it answers is not to be read. */
async function isThere(url) {
  try {
    const signal = AbortSignal.timeout?.(PATIENCE);
    await fetch(url, { ...bare, method: "HEAD", mode: "no-cors", cache: "no-store", signal });
    return true;
  } catch {
    return false;
  }
}

/** The text that comes, as long as it is no more than `most` bytes. */
async function whole(response, most, wait) {
  const reader = response.body.getReader();
  const decoder = new TextDecoder();
  let text = "";
  let bytes = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return { text: text + decoder.decode() };
    wait();
    bytes += value.length;
    if (bytes > most) {
      await reader.cancel();
      return { problem: "large" };
    }
    text += decoder.decode(value, { stream: true });
  }
}
