/** The drawing of a state: drawn with plain shapes, or photographed. */
import { NoPhoto } from "../data/photos.js";
import { drawing } from "../parts/drawing.js";
import { button, el, heading } from "../parts/element.js";
import { ticks } from "../parts/fields.js";
import { announce, notice } from "../parts/status.js";
import {
  SHAPES,
  boxOf,
  drawn,
  elementOf,
  moved,
  pad,
  shapesOf,
  short,
  svgOf,
  through,
} from "./drawn-shapes.js";
import { PHOTO, smallPhoto } from "./small-photo.js";
import { run } from "../data/queue.js";
import { redraw } from "../parts/navigation.js";

const TOOLS = ["line", "polyline", "rect", "circle", "ellipse", "path"];
const STEPS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

/** Draws or photographs the drawing `drawing` of a pack; each change is kept at once. */
export function drawingScreen(draft, { drawing: name, title }) {
  const now = draft.drawing(name);
  const photo = now.startsWith(PHOTO);
  const asShown = () => {
    const node = drawing({ drawings: { [name]: draft.drawing(name) } }, name);
    node.classList.add("editor-shown");
    return node;
  };
  let shown = asShown();
  draft.changed = () => {
    const fresh = asShown();
    shown.replaceWith(fresh);
    shown = fresh;
  };
  return el(
    "section",
    { class: "shelf" },
    el("p", { class: "kicker" }, "Drawing"),
    heading(1, title || name),
    el("p", { class: "quiet" }, "As it is shown with the question:"),
    shown,
    photoInput(draft, name),
    photo
      ? button(
          "Draw it instead",
          () =>
            run(async () => {
              draft.draw(name, svgOf([], title || name, boxOf("")));
              await redraw();
            }),
          { class: "plain wide" },
        )
      : padOf(draft, name, title || name, now),
  );
}

function photoInput(draft, name) {
  const input = el("input", {
    type: "file",
    accept: "image/*",
    class: "unseen",
    onchange: () =>
      run(async () => {
        try {
          draft.draw(name, await smallPhoto(input.files[0]));
          await redraw();
        } catch (error) {
          if (!(error instanceof NoPhoto)) throw error;
          notice(error.message);
        }
      }),
  });
  return el("label", { class: "plain file" }, "Photograph it", input);
}

/** The pad with its tools and the list of shapes. */
function padOf(draft, name, title, svg) {
  const box = boxOf(svg);
  const [left, top, width, height] = box.trim().split(/\s+/).map(Number);
  const surface = pad(box);
  surface.setAttribute("class", "editor-pad");
  surface.setAttribute("role", "img");
  surface.setAttribute("aria-label", "The drawing. Its shapes are listed below it.");
  const list = el("ul", { class: "found", "aria-label": "Shapes" });
  const finish = button("End the line", () => ended(), { class: "plain", hidden: true });
  const past = [];
  let shapes = shapesOf(svg);
  let chosen = -1;
  let tool = "line";
  let mark = true;
  let points = [];

  const change = (next) => {
    past.push(shapes);
    shapes = next;
    draft.draw(name, svgOf(shapes, title, box));
    draw();
  };
  const replace = (place, shape) => change(shapes.map((one, at) => (at === place ? shape : one)));
  const add = (shape) => {
    points = [];
    finish.hidden = true;
    if (shape) {
      chosen = shapes.length;
      change([...shapes, shape]);
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
              el("strong", {}, `${place + 1}. ${SHAPES[shape.tag]}`),
              el("span", { class: "quiet" }, shape.mark ? "what to look at" : "around it"),
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
    announce("Taken away.");
  };
  const tools = el(
    "div",
    { class: "row", role: "group", "aria-label": "The chosen shape" },
    [
      ["←", -2, 0, "left"],
      ["→", 2, 0, "right"],
      ["↑", 0, -2, "up"],
      ["↓", 0, 2, "down"],
    ].map(([sign, dx, dy, word]) =>
      button(sign, () => shift(dx, dy), { class: "plain", "aria-label": `Move ${word}` }),
    ),
    button(
      "What to look at, or around it",
      () => replace(chosen, { ...shapes[chosen], mark: !shapes[chosen].mark }),
      { class: "plain" },
    ),
    button("Take away", away, { class: "plain" }),
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
    "Take back",
    () => {
      if (points.length > 0) {
        points = points.slice(0, -1);
        finish.hidden = points.length < 2;
        draw(through(points, mark, false));
      } else if (past.length > 0) {
        shapes = past.pop();
        chosen = -1;
        draft.takeBack();
        draw();
      } else announce("There is nothing to take back.");
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
  return [
    el(
      "fieldset",
      { class: "tick-list editor-tools" },
      el("legend", {}, "Draw"),
      ["choose", ...TOOLS].map((one) =>
        el(
          "label",
          {},
          el("input", {
            type: "radio",
            name: "editor-tool",
            value: one,
            checked: one === tool,
            onchange: () => {
              tool = one;
              add(null);
            },
          }),
          one === "choose" ? "Choose and move" : SHAPES[one],
        ),
      ),
    ),
    ticks("How", [["mark", "What to look at (black); else around it (grey)"]], ["mark"], (now) => {
      mark = now.length > 0;
      return false;
    }),
    surface,
    el(
      "div",
      { class: "row" },
      finish,
      undo,
      button("Put one in the middle", middle, { class: "plain" }),
    ),
    tools,
    list,
  ];
}
