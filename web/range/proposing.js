/** Proposals: what was seen, sent to the keepers of the range by whoever follows it. */
import { sightingsFile } from "../data/sightings-file.js";
import { offers } from "../data/server.js";
import { read, write } from "../data/store.js";
import { button, el, heading } from "../parts/element.js";
import { sheet } from "../parts/sheet.js";
import { notice } from "../parts/status.js";
import { dateText } from "../parts/days.js";
import { run } from "../data/queue.js";
import {
  KEEPERS_NOT_REACHED,
  keepersAnswered,
  nothingWasSent,
  proposalOf,
  PROPOSE_IT_TO_THE_KEEPERS,
  PROPOSED,
  SEND_IT,
  SENT_TO_THE_KEEPERS,
  STATES_OF_A_PROPOSAL,
  WHAT_THE_KEEPERS_GET,
  WORD_OF_THE_KEEPERS,
} from "./words.js";

const KEY = "proposing"; // under which the word is kept
const LONGEST = 60_000;

/** A place for what the network says, filled when it does: no screen waits for that. */
function later(making) {
  const place = el("div", {});
  making().then((nodes) => nodes && place.append(...[nodes].flat()));
  return place;
}

/** The button that proposes a sighting, where there are keepers who take proposals. */
export const proposeButton = (sighting) => later(() => buttonFor(sighting));

/** What became of what was proposed from here, a line each, where that can be asked. */
export const proposalLines = () => later(lines);

async function buttonFor(sighting) {
  const { proposals } = await offers();
  if (!proposals) return null;
  return button(PROPOSE_IT_TO_THE_KEEPERS, () => run(() => ask(proposals, sighting)), {
    class: "main wide",
  });
}

async function lines() {
  const { proposals } = await offers();
  const word = await read("kept", KEY);
  if (!proposals || !word) return null;
  const answer = await sent(proposals, word).catch(() => null);
  if (!answer?.ok) return null;
  const answers = (await answer.json()).proposals;
  if (answers.length === 0) return null;
  const line = ({ time, state, said }) =>
    el(
      "li",
      {},
      proposalOf(dateText(time.slice(0, 10)), STATES_OF_A_PROPOSAL[state], said && ` ${said}`),
    );
  return [heading(2, PROPOSED), el("ul", { class: "plain-list" }, answers.map(line))];
}

async function ask(proposals, sighting) {
  const field = el("input", {
    id: "word",
    autocomplete: "off",
    autocapitalize: "none",
    value: (await read("kept", KEY)) ?? "",
  });
  const go = () =>
    run(async () => {
      const word = field.value.trim();
      shut();
      await write("kept", KEY, word);
      notice(await propose(proposals, word, sighting));
    });
  const shut = sheet(
    PROPOSE_IT_TO_THE_KEEPERS,
    el("p", {}, WHAT_THE_KEEPERS_GET),
    el("div", { class: "field" }, el("label", { for: "word" }, WORD_OF_THE_KEEPERS), field),
    button(SEND_IT, go, { class: "main wide" }),
  );
}

/** Sends a sighting; what to say of it. */
async function propose(proposals, word, sighting) {
  const { blob } = await sightingsFile([sighting]);
  try {
    const answer = await sent(proposals, word, {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: blob,
    });
    if (answer.ok) return SENT_TO_THE_KEEPERS;
    const { error } = await answer.json().catch(() => ({}));
    return nothingWasSent(error ?? keepersAnswered(answer.status));
  } catch {
    return KEEPERS_NOT_REACHED;
  }
}

function sent(proposals, word, { headers = {}, ...options } = /** @type {RequestInit} */ ({})) {
  return fetch(new URL("api/proposals", proposals), {
    cache: "no-store",
    signal: AbortSignal.timeout?.(LONGEST),
    headers: { ...headers, Authorization: `Bearer ${word}` },
    ...options,
  });
}
