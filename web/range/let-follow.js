/**
 * Lets others follow a range of one's own: from the own server, by a switch on a paired device, or
 * as a file that is put anywhere. The server makes it of what syncing brings.
 */
import { state } from "../data/state.js";
import { copyText } from "../parts/copying.js";
import { button, el, heading } from "../parts/element.js";
import { choice } from "../parts/fields.js";
import { saver } from "../parts/saving.js";
import {
  ADDRESS_COPIED,
  ADDRESS_NOT_COPIED,
  COPY_THE_ADDRESS,
  HOW_OTHERS_FOLLOW,
  ITS_ADDRESS,
  LET_OTHERS_FOLLOW,
  LETTING_OTHERS_FOLLOW,
  NO,
  WHAT_FOLLOWERS_NEED,
  WHAT_FOLLOWERS_SEE,
  YES,
} from "./follow-words.js";

const SAID_OF_COPYING = { done: ADDRESS_COPIED, failed: ADDRESS_NOT_COPIED };

/** The part of a range's screen about others who follow it. */
export function letFollow(range) {
  return [
    heading(2, LET_OTHERS_FOLLOW),
    ...(state.settings.paired
      ? fromTheServer(range)
      : [el("p", { class: "quiet" }, HOW_OTHERS_FOLLOW)]),
  ];
}

/** The switch, and the address while it is on. */
function fromTheServer({ id, shared = "" }) {
  const below = el("div", {});
  const show = (now) => below.replaceChildren(...(now === "yes" ? address(id) : []));
  const save = saver(id, "shared", LETTING_OTHERS_FOLLOW);
  const switched = async (value) => {
    const kept = await save(value);
    if (kept) show(value);
    return kept;
  };
  show(shared);
  const answers = [
    ["", NO],
    ["yes", YES],
  ];
  return [choice(LETTING_OTHERS_FOLLOW, answers, shared, switched, WHAT_FOLLOWERS_SEE), below];
}

/** Where it is, as it is typed or pasted by those who follow it. */
function address(id) {
  const url = new URL(`ranges/${id}.json`, location.origin).href;
  return [
    el("p", {}, ITS_ADDRESS),
    el("p", {}, url),
    button(COPY_THE_ADDRESS, ({ currentTarget }) => copyText(url, currentTarget, SAID_OF_COPYING), {
      class: "plain wide",
    }),
    el("p", { class: "quiet" }, WHAT_FOLLOWERS_NEED),
  ];
}
