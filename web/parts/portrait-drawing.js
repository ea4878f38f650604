/**
 * A portrait as text of SVG: the layers that `portrait` of the engine gives, put together. No DOM
 * here: the text is the same wherever it is made.
 *
 * A body is {left, right: where its buffers are; body, roof, over: what is drawn; panes, doors;
 * side: the panel with lining and rivets; mark, numbers, front, panel, horns: where these stand;
 * plan: the wheels it has where nothing else is said}.
 */
import { coach, wagon } from "./portrait-coaches.js";
import { lid, set } from "./portrait-boxes.js";
import { against, filling, hex } from "./portrait-colours.js";
import {
  emblem,
  finish,
  front,
  horns,
  joins,
  lettering,
  lining,
  load,
  number,
  pane,
  winding,
} from "./portrait-details.js";
import { engine } from "./portrait-engines.js";
import { building } from "./portrait-places.js";
import { BARE, line, path, rect } from "./portrait-shapes.js";
import { axle, bogie, buffer, coupling, wheel, wheelsOf } from "./portrait-under.js";

/** @import { Portrait } from "../data/engine-types.d.ts" */

const COACHES = /coach$|^sleeper$|^saloon$/;
const WAGONS = /wagon$|^van$|^hopper$|^guards_van$|^crane$/;
const STANDING = /^(signal|station|signal_box|crossing|buffer_stop|building|piece)$/;
const SHADE = ' fill-opacity=".28"';
const FAINT = ' stroke-opacity=".5" stroke-dasharray="2.4 1.6"';

/** @returns {any} a body, as above */
function bodyOf(sort, told) {
  if (COACHES.test(sort)) return coach(sort, told);
  if (WAGONS.test(sort)) return wagon(sort, told);
  return STANDING.test(sort) ? building(sort, told) : engine(sort, told);
}

/** What a portrait says of its layers. */
function reader(portrait) {
  const layers = new Map(portrait.layers.map((one) => [one.layer, one]));
  return {
    has: (layer) => layers.has(layer),
    look: (layer) => layers.get(layer)?.look ?? "",
    looks: (layer) => layers.get(layer)?.looks ?? [],
    several: (layer) => (layers.get(layer)?.looks.length ?? 0) > 1,
  };
}

/**
 * A portrait as the text of what stands in an <svg viewBox="0 0 120 66">.
 * @param {Portrait} portrait
 * @param {boolean} small in a list: what could not be seen is left out
 */
export function portraitText(portrait, small) {
  const told = reader(portrait);
  if (told.has("set")) return inABox(portrait, told);
  const sort = told.look("body") || "piece";
  const { fill, first, defs } = filling(told.looks("colour"));
  const second = hex(portrait.second) || against(first);
  const body = bodyOf(sort, {
    colour: fill,
    second: hex(portrait.second),
    length: told.look("extent"),
    load: portrait.load,
    shade: "",
  });
  const parts = [defs, body.standing ? standing(body, told) : running(body, told, small)];
  parts.push(shaped(body, told, first));
  parts.push(onSides(body, told, { first, second, portrait, small }));
  if (!small && told.has("box")) parts.push(lid(told.look("box"), [96, 1.5, 20, 10], false));
  return parts.join("");
}

/** What it runs on, and its ends. */
function running(body, told, small) {
  const named = told.look("plan");
  const bogies = told.look("bogies");
  const fixed = bogies === "none" && body.plan === "two_and_two" ? "two" : body.plan;
  const turning = body.plan === "two" && !["", "none"].includes(bogies) ? "two_and_two" : fixed;
  const run = wheelsOf(named || turning, body);
  const axles = [...run.wheels, ...(body.tenderAxles ?? []).map((x) => [x, 5])];
  const wheels = axles.map(([x, radius]) => wheel(told.look("wheels"), x, radius)).join("");
  const guards =
    run.bogies.length === 0 && told.has("axles")
      ? axles.map(([x, radius]) => axle(told.look("axles"), x, radius)).join("")
      : "";
  const rod = run.rod
    ? run.wheels.slice(...(Array.isArray(run.rod) ? [run.rod[0], run.rod[1] + 1] : [0]))
    : [];
  const rods =
    rod.length > 0
      ? line(rod[0][0], 53.6, rod.at(-1)[0], 53.6, 1.8, "#8b9296") +
        line(rod[0][0], 53.6, rod.at(-1)[0], 53.6, 0.5)
      : "";
  const frames = run.bogies.map((one) => bogie(bogies, one)).join("");
  const base = told.look("base");
  const frame = rect(body.left, 46, body.right - body.left, 2.6, hex(base) || "#3a3f43");
  const rail = line(1, 61.4, 119, 61.4, 0.8, "", ' stroke-opacity=".5"');
  if (small) return rail + frame + wheels;
  const mirrored = (text) =>
    `${text}<g transform="translate(${body.left + body.right} 0) scale(-1 1)">${text}</g>`;
  const shoe = told.look("power") === "electric" ? path("M54 57H66L64 60.4H56Z", "#d8ab3c") : "";
  const ends = mirrored(
    buffer(told.look("buffers"), body.left) +
      (told.has("coupling") ? coupling(told.look("coupling"), body.left) : ""),
  );
  return rail + ends + frame + wheels + frames + guards + rods + shoe;
}

function standing(body, told) {
  const base = hex(told.look("base"));
  return body.base === undefined
    ? ""
    : base === ""
      ? body.base.replace('"BASE"', '"none"')
      : body.base.replace("BASE", base);
}

/** Body, roof, windows and doors. */
function shaped(body, told, first) {
  const roof = hex(told.look("roof"));
  const top =
    body.roof === ""
      ? ""
      : path(body.roof, roof || first || "none", roof === "" && first !== "" ? "" : "");
  const darker =
    body.roof !== "" && roof === "" && first !== "" ? path(body.roof, "#000000", SHADE) : "";
  const doors = body.doors
    .map(([x, y, wide, high]) => rect(x, y, wide, high, "none", 0, ' stroke-width=".7"'))
    .join("");
  const bulge = body.bulge ? rect(...body.bulge, "none", 1, ' stroke-width=".9"') : "";
  const shape =
    told.look("colour") === ""
      ? body.body.replaceAll('fill="none"', `fill="none"${FAINT}`)
      : body.body;
  return shape + top + darker + doors + bulge;
}

/** Lining, lettering, windows, and what is fitted to the body. */
function onSides(body, told, { first, second, portrait, small }) {
  const shine = finish(told.look("finish"), body.shine ? [...body.shine, 12] : body.side);
  const panels = told.look("lining") === "line" && body.lines ? body.lines : [body.side];
  const lined = panels
    .map((panel) => lining(told.look("lining"), panel, body.twoTone, second))
    .join("");
  const panes = body.panes
    .map((one) => pane(told.look("windows"), one, small ? "" : told.look("inside")))
    .join("");
  const moves = told.look("load") === "moving" && body.moves ? rect(...body.moves, "#1b1d1f") : "";
  const laden =
    told.look("load") === "load" || (body.bed !== undefined && portrait.load !== "")
      ? load(portrait.load || "coal", body)
      : "";
  const letter = lettering(
    told.look("lettering"),
    hex(portrait.letters),
    against(body.bed === undefined || first !== "" ? first : ""),
  );
  const mark = emblem(
    told.look("emblem"),
    body.mark,
    portrait.name,
    small ? { ...letter, film: () => "", sunk: false } : letter,
  );
  if (small) return laden + lined + body.over + panes + moves + mark;
  const fitted =
    (body.horns ? horns(told.look("horns"), body.horns) : "") +
    (body.front ? front(told.look("front"), body.front, body.panel ?? [body.left, 30, 5, 5]) : "") +
    (told.has("keyhole") ? winding(told.look("keyhole"), told.look("key"), keyPlace(body)) : "");
  return (
    laden +
    shine +
    lined +
    joins(told.look("joins"), body.side, against(first)) +
    body.over +
    panes +
    moves +
    mark +
    numbers(body, told, portrait, letter) +
    fitted
  );
}

/** @returns {[number, number]} */
const keyPlace = ({ side: [x, y, wide, high] }) => [x + wide * 0.86, y + high * 0.62];

function numbers(body, told, portrait, { colour }) {
  const look = told.look("number");
  const [one, other] = body.numbers;
  const places =
    { one_end: [one], both_ends: [one, other], plate: [one], printed: [one] }[look] ?? [];
  return places
    .filter(Boolean)
    .map((place) => number(portrait.number, place, colour, look === "plate"))
    .join("");
}

function inABox(portrait, told) {
  const { fill, first, defs } = filling(told.looks("colour"));
  const sort = told.look("body");
  const contents =
    portrait.contents.length > 0 ? portrait.contents : sort === "set" || sort === "" ? [] : [sort];
  const mini = (body, leads) => {
    const drawn = bodyOf(body, {
      colour: leads && first !== "" ? fill : "none",
      second: "",
      length: "",
      load: "",
      shade: "",
    });
    const { wheels } = wheelsOf(drawn.plan, drawn);
    return (
      wheels.map(([x, radius]) => wheel("black", x, radius)).join("") +
      rect(drawn.left, 46, drawn.right - drawn.left, 2.6, "#3a3f43") +
      drawn.body +
      (drawn.roof ? path(drawn.roof, leads && first ? fill : "none") : "") +
      drawn.panes.map((one) => rect(...one, "#f7f7f5", 0, BARE)).join("")
    );
  };
  return defs + set({ look: told.look, contents, name: "" }, mini);
}
