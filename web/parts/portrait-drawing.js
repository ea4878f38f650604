/**
 * A portrait as text of SVG: the layers that `portrait` of the engine gives, put together. No DOM
 * here: the text is the same wherever it is made.
 *
 * A body is {left, right: where its buffers are; body, roof, over: what is drawn; roofs: what its
 * roof is by its shape; panes, doors; gangways: where these are; boards, gear: it can have these;
 * side: the panel with lining and rivets; mark, numbers, front, panel, horns: where these stand;
 * plan: the wheels it has where nothing else is said; yellow: where yellow at its front begins;
 * spots: where to see what only it has}.
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
import { gangway, warning } from "./portrait-fittings.js";
import { building } from "./portrait-places.js";
import { BARE, line, path, rect } from "./portrait-shapes.js";
import {
  axle,
  bogie,
  buffer,
  coupling,
  footboards,
  underGear,
  wheel,
  wheelsOf,
} from "./portrait-under.js";

/** @import { Portrait } from "../data/engine-types.d.ts" */

const IRON = "#3a3f43";
/** @type {[number, number, number, number]} */
const BOX = [104, 1, 15, 8]; // where the box of a piece is drawn
const IN_A_BOX = {
  box: [14, 12, 9],
  lid: [60, 20, 14],
  colour: [20, 52, 9],
  body: [20, 52, 9],
  train: [60, 50, 14],
  track: [60, 58, 8],
  controller: [106, 48, 10],
  power: [110, 52, 8],
};
const COACHES = /coach$|^sleeper$|^saloon$/;
const WAGONS = /wagon$|^van$|^hopper$|^guards_van$|^crane$/;
const STANDING = /^(signal|station|signal_box|crossing|buffer_stop|building|piece)$/;
const SHADE = ' fill-opacity=".28"';
const FAINT = ' stroke-opacity=".5" stroke-dasharray="2.4 1.6"';

/** @returns {any} a body, as above */
function bodyOf(sort, traits) {
  if (COACHES.test(sort)) return coach(sort, traits);
  if (WAGONS.test(sort)) return wagon(sort, traits);
  return STANDING.test(sort) ? building(sort, traits) : engine(sort, traits);
}

/** What a portrait says of its layers. */
function reader(portrait) {
  const layers = new Map(portrait.layers.map((layer) => [layer.layer, layer]));
  const look = (layer) => layers.get(layer)?.look ?? "";
  const looks = (layer) => layers.get(layer)?.looks ?? [];
  return {
    has: (layer) => layers.has(layer),
    look,
    looks,
    /** What is drawn for a layer, paler where it is only the likeliest of several. */
    soft: (layer, text) =>
      text !== "" && looks(layer).length > 1 ? `<g opacity=".55">${text}</g>` : text,
  };
}

/** What all is drawn from. */
function setUp(portrait) {
  const reading = reader(portrait);
  const { fill, first, defs } = filling(reading.looks("colour"));
  const body = bodyOf(reading.look("body") || "piece", {
    colour: fill,
    second: hex(portrait.second),
    extent: reading.look("extent"),
    fitted: (layer, draw) => reading.soft(layer, draw(reading.look(layer))),
  });
  return { reading, fill, first, defs, body, run: runOf(body, reading) };
}

/** The wheels of a body, by what is said of them and of its bogies. */
function runOf(body, reading) {
  if (body.standing) return { wheels: [], bogies: [] };
  const bogies = reading.look("bogies");
  const fixed = bogies === "none" && body.plan === "two_and_two" ? "two" : body.plan;
  const turning = body.plan === "two" && !["", "none"].includes(bogies) ? "two_and_two" : fixed;
  return wheelsOf(reading.look("plan") || turning, body);
}

/**
 * A portrait as the text of what stands in an <svg viewBox="0 0 120 66">.
 * @param {Portrait} portrait
 * @param {boolean} small in a list: what could not be seen is left out
 */
export function portraitText(portrait, small) {
  const drawn = setUp(portrait);
  const { reading, defs, body } = drawn;
  if (reading.has("set")) return defs + inABox(portrait, drawn);
  const under = body.standing ? standing(body, reading) : running(drawn, small);
  const text = defs + under + shaped(drawn, small) + onSides(drawn, portrait, small);
  return small || !reading.has("box")
    ? text
    : text + reading.soft("box", lid(reading.look("box"), BOX, false));
}

/** What it runs on, and its ends. */
function running({ reading, body, run }, small) {
  const { look, soft, has } = reading;
  const axles = [...run.wheels, ...(body.tenderAxles ?? []).map((x) => [x, 5])];
  const each = (draw) => axles.map(([x, radius]) => draw(x, radius)).join("");
  const rolling = soft(
    "wheels",
    each((x, radius) => wheel(look("wheels"), x, radius)),
  );
  const guessed = body.driven !== undefined && look("plan") === ""; // how many there are
  const wheels = guessed ? `<g opacity=".4">${rolling}</g>` : rolling;
  const frame = rect(body.left, 46, body.right - body.left, 2.6, hex(look("base")) || IRON);
  const rail = line(1, 61.4, 119, 61.4, 0.8, "", ' stroke-opacity=".5"');
  if (small) return rail + frame + wheels;
  const rods = (run.rods ?? []).map(
    ([from, to]) => line(from, 53.6, to, 53.6, 1.8, "#8b9296") + line(from, 53.6, to, 53.6, 0.5),
  );
  const guarded = run.bogies.length === 0 && has("axles");
  const guards = guarded
    ? soft(
        "axles",
        each((x, r) => axle(look("axles"), x, r)),
      )
    : "";
  const frames = soft("bogies", run.bogies.map((place) => bogie(look("bogies"), place)).join(""));
  const shoe = look("power") === "electric" ? path("M54 57H66L64 60.4H56Z", "#d8ab3c") : "";
  const end =
    soft("buffers", buffer(look("buffers"), body.left)) +
    (has("coupling") ? soft("coupling", coupling(look("coupling"), body.left)) : "");
  const turned = `translate(${body.left + body.right} 0) scale(-1 1)`;
  const ends = `${end}<g transform="${turned}">${end}</g>`;
  const gear = body.gear ? soft("under_gear", underGear(look("under_gear"), run)) : "";
  const steps = body.boards ? soft("footboards", footboards(look("footboards"), body, run)) : "";
  return rail + ends + frame + gear + wheels + frames + guards + rods.join("") + shoe + steps;
}

function standing(body, reading) {
  return (body.base ?? "").replace("BASE", hex(reading.look("base")) || "none");
}

/** Body, roof, windows and doors. */
function shaped({ reading, body, first }, small) {
  const roof = hex(reading.look("roof"));
  const [outline, detail] = body.roofs?.[reading.look("roof_shape")] ?? [body.roof, ""];
  const over = outline === "" ? "" : path(outline, roof || first || "none");
  const shade = over !== "" && roof === "" && first !== "" ? path(outline, "#000000", SHADE) : "";
  const roofed = reading.soft("roof", over) + shade + (small ? "" : detail);
  const doors = body.doors
    .map(([x, y, wide, high]) => rect(x, y, wide, high, "none", 0, ' stroke-width=".7"'))
    .join("");
  const bulge = body.bulge ? rect(...body.bulge, "none", 1, ' stroke-width=".9"') : "";
  const shape =
    reading.look("colour") === ""
      ? body.body.replaceAll('fill="none"', `fill="none"${FAINT}`)
      : body.body;
  const through = (body.gangways ?? []).map((at) => gangway(reading.look("gangway"), ...at));
  return (
    reading.soft("gangway", through.join("")) +
    shape +
    reading.soft("roof_shape", roofed) +
    doors +
    bulge
  );
}

/** Lining, lettering, windows, and what is fitted to the body. */
function onSides({ reading, body, first }, portrait, small) {
  const { look, soft, has } = reading;
  const stripe = hex(portrait.second) || against(first);
  const panels = look("lining") === "line" && body.lines ? body.lines : [body.side];
  const lines = panels.map((panel) => lining(look("lining"), panel, body.twoTone, stripe)).join("");
  const lined = portrait.second === "" && lines !== "" ? `<g opacity=".6">${lines}</g>` : lines;
  const panes = body.panes
    .map((window) => pane(look("windows"), window, small ? "" : look("inside")))
    .join("");
  const moves = look("load") === "moving" && body.moves ? rect(...body.moves, "#1b1d1f") : "";
  const laden =
    look("load") === "load" || (body.bed !== undefined && portrait.load !== "")
      ? load(portrait.load || "coal", body)
      : "";
  const letter = lettering(look("lettering"), hex(portrait.letters), first);
  const put = small ? { ...letter, film: () => "", sunk: false } : letter;
  const shown = emblem(look("emblem"), body.mark, portrait.name, put);
  const mark = soft("emblem", body.low ? lowered(shown, body.mark) : shown);
  const glazed = soft("windows", panes);
  if (small) return laden + lined + body.over + glazed + moves + mark;
  const shine = finish(look("finish"), body.shine ? [...body.shine, 12] : body.side);
  const panel = body.panel ?? [body.left, 30, 5, 5];
  const fitted =
    (body.horns ? soft("horns", horns(look("horns"), body.horns)) : "") +
    (body.yellow ? soft("warning", warning(look("warning"), ...body.yellow)) : "") +
    (body.front ? soft("front", front(look("front"), body.front, panel)) : "") +
    (has("keyhole") ? winding(look("keyhole"), look("key"), keyPlace(body)) : "");
  const joined = soft("joins", joins(look("joins"), body.side, against(first)));
  const numbered = soft("number", numbers(body, reading, portrait, letter));
  return (
    laden +
    soft("finish", shine) +
    soft("lining", lined) +
    joined +
    body.over +
    glazed +
    moves +
    mark +
    numbered +
    fitted
  );
}

/** An emblem small enough for a side that is low. */
const lowered = (text, [x, y]) =>
  text && `<g transform="translate(${x} ${y}) scale(.65) translate(${-x} ${-y})">${text}</g>`;

/** @returns {[number, number]} */
const keyPlace = (body) => body.key ?? [body.right - 14, 42];

function numbers(body, reading, portrait, { colour }) {
  const look = reading.look("number");
  const [first, second] = body.numbers;
  const places =
    { one_end: [first], both_ends: [first, second], plate: [first], printed: [first] }[look] ?? [];
  return places
    .filter(Boolean)
    .map((place) => number(portrait.number, place, colour, look === "plate"))
    .join("");
}

/** A set: its pieces small in front of the lid; the colour is that of the engine. */
function inABox(portrait, { reading, fill, first }) {
  const sort = reading.look("body");
  const contents = portrait.contents.length === 0 && sort !== "set" ? [sort] : portrait.contents;
  const mini = (body, leads) => {
    const colour = leads && first !== "" ? fill : "none";
    const plain = (_, draw) => draw("");
    const drawn = bodyOf(body, { colour, second: "", extent: "", fitted: plain });
    const wheels = wheelsOf(drawn.plan, drawn).wheels.map(([x, r]) => wheel("black", x, r));
    return (
      wheels.join("") +
      rect(drawn.left, 46, drawn.right - drawn.left, 2.6, IRON) +
      drawn.body +
      (drawn.roof ? path(drawn.roof, colour) : "") +
      drawn.panes.map((window) => rect(...window, "#f7f7f5", 0, BARE)).join("")
    );
  };
  return set({ look: reading.look, contents }, mini);
}

/**
 * Where in a portrait a layer is to be seen: [x, y, radius]; null where it is not.
 * @param {Portrait} portrait
 * @param {string} layer
 */
export function whereIs(portrait, layer) {
  const { reading, body, run } = setUp(portrait);
  if (reading.has("set")) return IN_A_BOX[layer] ?? null;
  const [x, y, wide, high] = body.side;
  const [first, last] = [run.wheels[0], run.wheels.at(-1)];
  const glass = body.panes[Math.min(1, body.panes.length - 1)];
  const turning = last ? [last[0], 61 - last[1], last[1] + 3] : null;
  const window = glass ? [glass[0] + glass[2] / 2, glass[1] + glass[3] / 2, 8] : null;
  const numbered = body.numbers.find(Boolean) ?? null;
  const places = {
    body: [(body.left + body.right) / 2, 34, 17],
    extent: [body.right, 34, 10],
    colour: [x + wide * 0.75, y + high * 0.5, 8],
    finish: [x + wide * 0.6, y + 3, 8],
    lining: [x + wide * 0.3, y + high * 0.75, 8],
    joins: [x + wide * 0.2, y + high - 2, 7],
    roof: [(body.left + body.right) / 2, 16, 9],
    emblem: [body.mark[0], body.mark[1], 10],
    lettering: [body.mark[0], body.mark[1], 10],
    number: numbered && [...numbered, 8],
    windows: window,
    inside: window,
    front: body.front && [body.front[0] - 2, body.front[1] - 2, 8],
    horns: body.horns && [body.horns[0][0], body.horns[0][1] - 2, 8],
    load: [60, body.moves ? body.moves[1] + 5 : (body.bed ?? body.heap?.[2] ?? 30) - 4, 11],
    plan: first && last ? [(first[0] + last[0]) / 2, 53, 13] : null,
    wheels: turning,
    axles: turning,
    bogies: run.bogies.length > 0 ? [run.bogies[0][0], 54, 12] : turning,
    base: [(body.left + body.right) / 2, body.standing ? 58 : 47, 7],
    buffers: [body.right + 2, 46, 6],
    coupling: [body.left - 1, 52, 7],
    power: [60, 57, 7],
    keyhole: [...keyPlace(body), 7],
    key: [...keyPlace(body), 7],
    box: [BOX[0] + 7, BOX[1] + 4, 8],
    ...body.spots,
  };
  return places[layer] ?? null;
}
