/*
 * Drawings come from a pack as text: only what is listed here is let in, and the class "mark" for
 * what to look at.
 */
const ELEMENTS = words("svg g path circle ellipse rect line polyline polygon text");
const ATTRIBUTES = words(`
  viewBox width height d x y x1 y1 x2 y2 cx cy r rx ry points transform fill fill-opacity fill-rule
  stroke stroke-width stroke-linecap stroke-linejoin stroke-dasharray stroke-opacity opacity
  font-family font-size font-weight text-anchor`);
const SVG = "http://www.w3.org/2000/svg";
const parsed = new WeakMap();

/** The drawing `key` of a pack as a node of its own; an empty square when there is none. */
export function drawing(pack, key) {
  if (!parsed.has(pack)) parsed.set(pack, new Map());
  const known = parsed.get(pack);
  if (!known.has(key)) known.set(key, parse(pack.drawings[key] ?? ""));
  return known.get(key).cloneNode(true);
}

/** A drawing, or a photo as a data: URL, that is in no pack. */
export function pictured(text) {
  return parse(text);
}

const PHOTO = /^data:image\/jpeg;base64,[\w+/=]+$/;

function parse(text) {
  const root = PHOTO.test(text) ? photo(text) : text === "" ? blank() : read(text);
  root.setAttribute("aria-hidden", "true");
  root.setAttribute("focusable", "false");
  root.setAttribute("class", "drawing");
  return root;
}

/** A photo in the frame of a drawing. */
function photo(href) {
  const node = blank();
  const image = document.createElementNS(SVG, "image");
  for (const [name, value] of Object.entries({ href, width: 96, height: 64 }))
    image.setAttribute(name, value);
  node.append(image);
  return node;
}

function read(text) {
  const root = new DOMParser().parseFromString(text, "image/svg+xml").documentElement;
  return root.namespaceURI === SVG && root.localName === "svg" ? allowed(root) : blank();
}

function blank() {
  const node = document.createElementNS(SVG, "svg");
  node.setAttribute("viewBox", "0 0 96 64");
  return node;
}

function allowed(from) {
  const node = document.createElementNS(SVG, from.localName);
  for (const [name, value] of attributesLetIn(from)) node.setAttribute(name, value);
  for (const child of from.childNodes) {
    if (child.nodeType === Node.TEXT_NODE) node.append(child.data);
    else if (child.namespaceURI === SVG && ELEMENTS.has(child.localName))
      node.append(allowed(child));
  }
  return node;
}

/** What is let in of the attributes of a node: [name, value] of each. */
export function attributesLetIn(node) {
  const pointing = /url\s*\(|\\/i; // in CSS \72 is an r
  const plain = ({ name, value }) => ATTRIBUTES.has(name) && !pointing.test(value);
  return [...node.attributes]
    .filter(
      (attribute) => plain(attribute) || (attribute.name === "class" && attribute.value === "mark"),
    )
    .map(({ name, value }) => [name, value]);
}

function words(text) {
  return new Set(text.trim().split(/\s+/));
}
