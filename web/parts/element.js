/**
 * Builds a DOM element. `props`: attributes, or `on<event>` handlers; false and null are left out.
 */
export function el(tag, props = {}, ...children) {
  return fill(document.createElement(tag), props, children);
}

const SVG = "http://www.w3.org/2000/svg";

/** Builds an SVG element in the same way. */
export function svg(tag, props = {}, ...children) {
  return fill(document.createElementNS(SVG, tag), props, children);
}

function fill(node, props, children) {
  for (const [name, value] of Object.entries(props)) {
    if (value === false || value === null || value === undefined) continue;
    if (name.startsWith("on")) node.addEventListener(name.slice(2), value);
    else node.setAttribute(name, value === true ? "" : String(value));
  }
  node.append(...children.flat(Infinity).filter((child) => child !== null && child !== false));
  return node;
}

/** A button that shows `label` and calls `act` when tapped. */
export function button(label, act, props = {}) {
  return el("button", { type: "button", ...props, onclick: act }, label);
}

/** Few words to see, and in their place all of them to hear. */
export function inFew(few, whole) {
  return [el("span", { "aria-hidden": "true" }, few), el("span", { class: "unseen" }, whole)];
}

/** A heading that can be given the focus when the screen changes. */
export function heading(level, text, props = {}) {
  return el(`h${level}`, { tabindex: "-1", ...props }, text);
}
