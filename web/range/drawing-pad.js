/** The drawing of what can be seen, or of a kind: drawn with plain shapes, or photographed. */
import { run } from "../data/queue.js";
import { record } from "../data/records.js";
import { gone } from "../collection/piece.js";
import { pictured } from "../parts/drawing.js";
import { button, el, heading } from "../parts/element.js";
import { choice, ticks } from "../parts/fields.js";
import { redraw } from "../parts/navigation.js";
import { saver, undoLast } from "../parts/saving.js";
import { announce } from "../parts/status.js";
import {
  boxOf,
  drawn,
  elementOf,
  filled,
  moved,
  pad,
  shapesOf,
  short,
  svgOf,
  through,
} from "./drawn-shapes.js";
import { photoInput } from "./photo-input.js";
import { PHOTO } from "./small-photo.js";
import {
  A_DRAWING,
  AROUND_IT,
  AS_IT_IS_SHOWN,
  CHOOSE_AND_MOVE,
  DRAW,
  DRAW_IT_INSTEAD,
  DRAWING,
  END_THE_LINE,
  FILLED_WITH,
  FILLS,
  HOW,
  LIST_OF_SHAPES,
  LOOK_AT_OR_AROUND,
  moveWord,
  PUT_ONE_IN_THE_MIDDLE,
  REMOVE,
  REMOVED,
  SHAPE_NAMES,
  TAKE_BACK,
  THE_CHOSEN_SHAPE,
  THE_DRAWING,
  WHAT_IS_LOOKED_AT,
  WHAT_TO_LOOK_AT_OR_AROUND_IT,
} from "./own-words.js";

const TOOLS = ["line", "polyline", "rect", "circle", "ellipse", "path"];
const STEPS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

/** Draws or photographs what the row `id` looks like; each stroke is kept at once. */
export function padScreen(_, { id }) {
  const row = record(id);
  if (!row || row.trashed !== "") return gone();
  const save = saver(id, "drawing", DRAWING);
  const shown = el("div", { class: "pad-shown" }, pictured(row.drawing));
  let last = Promise.resolve(); // a stroke is kept after the one before it
  const keep = (text) =>
    (last = last.then(async () => {
      if (await save(text)) shown.replaceChildren(pictured(text));
    }));
  const photo = row.drawing.startsWith(PHOTO);
  return el(
    "section",
    { class: "shelf" },
    heading(1, row.name || A_DRAWING),
    photo
      ? button(DRAW_IT_INSTEAD, () => run(() => keep("").then(redraw)), { class: "plain wide" })
      : padOf(row.drawing, row.name, keep),
    photoInput((taken) => keep(taken).then(redraw)),
    el("p", { class: "quiet" }, AS_IT_IS_SHOWN),
    shown,
  );
}

/** The pad with its tools and the list of shapes. */
function padOf(svg, title, keep) {
  const box = boxOf(svg);
  const [left, top, width, height] = box.trim().split(/\s+/).map(Number);
  const surface = pad(box);
  surface.setAttribute("class", "drawing-pad");
  surface.setAttribute("role", "img");
  surface.setAttribute("aria-label", THE_DRAWING);
  const list = el("ul", { class: "found", "aria-label": LIST_OF_SHAPES });
  const finish = button(END_THE_LINE, () => ended(), { class: "plain", hidden: true });
  let shapes = shapesOf(svg);
  let chosen = -1;
  let tool = "line";
  let mark = true;
  let fill = "";
  let points = [];

  const change = (next) => {
    shapes = next;
    keep(shapes.length > 0 ? svgOf(shapes, title, box) : "");
    draw();
  };
  const replace = (place, shape) =>
    change(shapes.map((before, at) => (at === place ? shape : before)));
  const add = (shape) => {
    points = [];
    finish.hidden = true;
    if (shape) {
      chosen = shapes.length;
      change([...shapes, filled(shape, fill)]);
    } else draw();
  };
  const ended = () => add(through(points, mark, false));

  function draw(passing = null) {
    surface.replaceChildren(
      ...shapes.map((shape, place) => {
        const node = elementOf(shape);
        if (place === chosen) node.classList.add("chosen");
        node.dataset.place = place;
        return node;
      }),
      ...(passing ? [elementOf(passing)] : []),
    );
    if (!passing) lists();
  }

  function lists() {
    const focused = list.contains(document.activeElement);
    list.replaceChildren(
      ...shapes.map((shape, place) =>
        el(
          "li",
          {},
          button(
            [
              el("strong", {}, `${place + 1}. ${SHAPE_NAMES[shape.tag]}`),
              el("span", { class: "quiet" }, shape.mark ? WHAT_IS_LOOKED_AT : AROUND_IT),
            ],
            () => {
              chosen = chosen === place ? -1 : place;
              draw();
            },
            { class: "hit", "aria-pressed": String(place === chosen) },
          ),
        ),
      ),
    );
    tools.hidden = chosen < 0;
    if (focused) list.querySelector("[aria-pressed=true]")?.focus();
  }

  const shift = (dx, dy) => chosen >= 0 && replace(chosen, moved(shapes[chosen], dx, dy));
  const away = () => {
    const next = shapes.filter((_, place) => place !== chosen);
    chosen = -1;
    change(next);
    announce(REMOVED);
  };
  const tools = el(
    "div",
    { class: "row", role: "group", "aria-label": THE_CHOSEN_SHAPE },
    [
      ["←", -2, 0, "left"],
      ["→", 2, 0, "right"],
      ["↑", 0, -2, "up"],
      ["↓", 0, 2, "down"],
    ].map(([sign, dx, dy, word]) =>
      button(sign, () => shift(dx, dy), { class: "plain", "aria-label": moveWord(word) }),
    ),
    button(
      WHAT_TO_LOOK_AT_OR_AROUND_IT,
      () => replace(chosen, { ...shapes[chosen], mark: !shapes[chosen].mark }),
      { class: "plain" },
    ),
    button(REMOVE, away, { class: "plain" }),
  );
  list.addEventListener("keydown", (event) => {
    if (chosen < 0) return;
    const step = STEPS[event.key];
    if (step) {
      event.preventDefault();
      shift(...step);
    } else if (event.key === "Delete" || event.key === "Backspace") {
      event.preventDefault();
      away();
      (list.querySelector("button") ?? undo).focus();
    }
  });

  const at = (event) => {
    const frame = surface.getBoundingClientRect();
    const scale = Math.min(frame.width / width, frame.height / height);
    const [x, y] = [
      event.clientX - frame.x - (frame.width - width * scale) / 2,
      event.clientY - frame.y - (frame.height - height * scale) / 2,
    ];
    return [left + x / scale, top + y / scale];
  };
  let begun = null;
  surface.addEventListener("pointerdown", (event) => {
    event.preventDefault();
    surface.setPointerCapture(event.pointerId);
    begun = at(event);
    if (tool === "polyline") {
      points = [...points, begun];
      finish.hidden = points.length < 2;
      draw(through(points, mark, false));
    } else if (tool === "path") points = [begun];
    else if (tool === "choose") {
      chosen = Number(/** @type {HTMLElement} */ (event.target).dataset.place ?? -1);
      points = [begun];
      draw();
    }
  });
  surface.addEventListener("pointermove", (event) => {
    if (!begun) return;
    if (tool === "path") {
      points.push(at(event));
      draw(through(points, mark, true));
    } else if (tool === "choose" && chosen >= 0) {
      const [x, y] = at(event);
      draw(moved(shapes[chosen], x - begun[0], y - begun[1]));
    } else if (tool !== "polyline" && tool !== "choose") draw(drawn(tool, begun, at(event), mark));
  });
  surface.addEventListener("pointerup", (event) => {
    if (!begun) return;
    const [from, to] = [begun, at(event)];
    begun = null;
    if (tool === "path") add(through(points, mark, true));
    else if (tool === "choose") {
      const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
      if (chosen >= 0 && Math.hypot(dx, dy) >= 1) shift(dx, dy);
      else draw();
    } else if (tool !== "polyline") add(drawn(tool, from, to, mark));
  });
  surface.addEventListener("pointercancel", () => {
    begun = null;
    draw();
  });

  const undo = button(
    TAKE_BACK,
    () => {
      if (points.length > 0) {
        points = points.slice(0, -1);
        finish.hidden = points.length < 2;
        draw(through(points, mark, false));
      } else undoLast();
    },
    { class: "plain" },
  );
  const middle = () => {
    const [x, y] = [left + width / 2, top + height / 2];
    const [from, to] = [
      [x - 20, y - 10],
      [x + 20, y + 10],
    ];
    const line = tool === "polyline" || tool === "path" || tool === "choose";
    add(
      line
        ? through([from, [x, Number(short(y + 12))], to], mark, tool === "path")
        : drawn(tool, from, to, mark),
    );
  };
  draw();
  const fills = choice(FILLED_WITH, FILLS, fill, (colour) => {
    fill = colour;
    if (chosen >= 0) replace(chosen, filled(shapes[chosen], fill));
    return false;
  });
  return [
    surface,
    el(
      "div",
      { class: "row" },
      finish,
      undo,
      button(PUT_ONE_IN_THE_MIDDLE, middle, { class: "plain" }),
    ),
    tools,
    el(
      "fieldset",
      { class: "tick-list pad-tools" },
      el("legend", {}, DRAW),
      ["choose", ...TOOLS].map((name) =>
        el(
          "label",
          {},
          el("input", {
            type: "radio",
            name: "pad-tool",
            value: name,
            checked: name === tool,
            onchange: () => {
              tool = name;
              add(null);
            },
          }),
          name === "choose" ? CHOOSE_AND_MOVE : SHAPE_NAMES[name],
        ),
      ),
    ),
    ticks(HOW, [["mark", LOOK_AT_OR_AROUND]], ["mark"], (now) => {
      mark = now.length > 0;
      return false;
    }),
    fills,
    list,
  ];
}
