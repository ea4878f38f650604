/**
 * The bodies of engines and tenders, as text of SVG. Engines look to the left. Each gives what
 * `portrait-drawing.js` says of a body; the rails are at 61.
 */
import { chimney, dome, pantograph, smokePlates } from "./portrait-fittings.js";
import { line, path, rect } from "./portrait-shapes.js";

const IRON = "#3a3f43";
const COAL = "#1b1e20";

const ENGINE = {
  left: 8,
  right: 112,
  panes: [],
  doors: [],
  over: "",
  plan: "three",
  front: [10, 38],
  horns: null,
  roof: "",
};

const vents = (x, y, count) =>
  Array.from({ length: count }, (_, n) => line(x + n * 3, y, x + n * 3, y + 7)).join("");

/** What collects the current; `otherwise`: where nothing is recorded. */
const onTop = (fitted, x, y, otherwise) =>
  fitted("pantograph", (look) => (look === "" ? otherwise : pantograph(look, x, y)));

/** Long diesels and electrics, by how their ends are. */
function diesel(sort, { colour, fitted }) {
  const nosed = sort === "nosed_diesel";
  const railcar = sort === "railcar";
  const body = nosed
    ? "M22 19H98L102 31Q112 31 112 40V46H8V40Q8 31 18 31Z"
    : railcar
      ? "M8 46V28Q9 19 18 19H102Q111 19 112 28V46Z"
      : "M9 46V21Q9 19 11 19H109Q111 19 111 21V46Z";
  const roofs = nosed
    ? "M22 19Q23 14 29 14H91Q97 14 98 19Z"
    : railcar
      ? "M13 20.5Q15 14 23 14H97Q105 14 107 20.5Q105 19 102 19H18Q15 19 13 20.5Z"
      : "M9 20Q10 14 17 14H103Q110 14 111 20Z";
  const cabs = nosed
    ? [
        [23.5, 22, 8, 7.5],
        [88.5, 22, 8, 7.5],
      ]
    : railcar
      ? [
          [10.5, 23, 5, 9],
          [104.5, 23, 5, 9],
        ]
      : [
          [11, 22, 4, 9],
          [17.5, 22, 6, 9],
          [96.5, 22, 6, 9],
          [105, 22, 4, 9],
        ];
  const side = railcar ? [30, 42.4, 54.8, 67.2, 79.6].map((x) => [x, 23, 9.6, 10]) : [];
  const grille =
    rect(42, 22, 36, 8.4, IRON, 0.8) +
    [0, 1, 2, 3, 4, 5, 6]
      .map((n) => line(46 + n * 4.7, 23, 46 + n * 4.7, 29.4, 0.6, "#8b9296"))
      .join("") +
    rect(52, 11.4, 16, 2.8, IRON, 0.8);
  return {
    ...ENGINE,
    left: nosed ? 8 : 9,
    right: nosed ? 112 : 111,
    body: path(body, colour),
    roof: roofs,
    panes: [...cabs, ...side],
    doors: railcar
      ? [
          [20, 21, 6, 25],
          [93.5, 21, 6, 25],
        ]
      : [
          [nosed ? 33.5 : 26.5, 21, 5, 25],
          [nosed ? 81.5 : 88.5, 21, 5, 25],
        ],
    over: (railcar ? "" : grille) + onTop(fitted, 60, railcar ? 14 : 11.4, ""),
    yellow: [nosed ? 8 : 9, nosed ? 33 : 21],
    spots: { pantograph: [60, 8, 9], warning: [nosed ? 9 : 10, 36, 8] },
    side: nosed ? [9, 33, 102, 13] : [10, 20, 100, 26],
    twoTone: nosed ? [19.5, 19, 81, 12] : null,
    mark: [60, 39, 34],
    numbers: [
      [nosed ? 26 : 22, 41],
      [nosed ? 94 : 98, 41],
    ],
    plan: "two_and_two",
    front: [nosed ? 8 : 9, 39],
    panel: nosed ? [8.5, 33, 5, 5] : railcar ? [11, 16, 6, 4] : [11.5, 15.5, 6, 4.2],
    horns: [
      [nosed ? 31 : 22, 14],
      [nosed ? 89 : 98, 14],
    ],
  };
}

/** A steam engine; with a tender of its own, or alone over the whole length. */
function steam(sort, { colour, fitted }) {
  const k = sort === "tender_engine" ? 0.66 : 1;
  const x = (at) => 8 + (at - 8) * k;
  const tank = sort === "tank_engine";
  const cab = tank ? 70 : 80;
  const end = tank ? 92 : 106;
  const boiler =
    rect(x(22), 27, x(cab + 4) - x(22), 15, colour) +
    rect(x(12), 26, x(24) - x(12), 16.5, COAL) +
    fitted("chimney", (look) => chimney(look, x(18.5), 26, k)) +
    fitted("dome", (look) => dome(look, x(48), 27, k, colour)) +
    fitted("smoke", (look) => smokePlates(look, x(11), 42.5, x(24) - x(11), colour));
  const tanks = tank
    ? rect(32, 30, 42, 16, colour) +
      rect(end, 30, 12, 16, colour) +
      path(`M${end} 30q6 -5 12 0Z`, COAL)
    : "";
  const cabin = path(`M${x(cab)} 46V19H${x(end)}V46Z`, colour);
  const plate =
    rect(8, 44, x(tank ? 104 : 108) - 8, 3, IRON) +
    (tank ? "" : path(`M${x(16)} 44Q${x(28)} 34 ${x(40)} 44Z`, colour));
  const tender =
    sort === "tender_engine"
      ? path("M82 46V29H112V46Z", colour) +
        path("M84 29Q97 19 110 29Z", COAL) +
        rect(80, 44, 32, 3, IRON)
      : "";
  return {
    ...ENGINE,
    right: tank ? 104 : sort === "tender_engine" ? 112 : 108,
    body: boiler + tanks + cabin + tender + plate,
    roof: `M${x(cab - 3)} 20Q${x((cab + end) / 2)} 12.5 ${x(end + 4)} 20Z`,
    panes: [[x(cab + 4), 23, x(end - 5) - x(cab + 4), 9]],
    over: [30, 58].map((at) => line(x(at), 27, x(at), tank && at > 31 ? 30 : 42)).join(""),
    side: tank
      ? [32, 30, 42, 16]
      : sort === "tender_engine"
        ? [82, 29, 30, 17]
        : [x(cab), 33, x(end) - x(cab), 13],
    lines: tank
      ? [
          [32, 30, 42, 16],
          [cab, 33, end - cab, 13],
        ]
      : [
          [x(cab), 33, x(end) - x(cab), 12],
          ...(sort === "tender_engine"
            ? [[82, 29, 30, 16]]
            : [[x(26), 28.5, x(cab - 4) - x(26), 12]]),
        ],
    mark: tank ? [53, 38, 38] : sort === "tender_engine" ? [97, 37.5, 27] : [x(55), 34.5, 44],
    numbers: [[x((cab + end) / 2), tank ? 40.5 : 40], null],
    plan: "three",
    driven: tank ? [14, 98] : sort === "tender_engine" ? [10, 76] : [12, 104],
    tenderAxles: sort === "tender_engine" ? [88, 106] : [],
    front: [12, 36],
    panel: [9, 34, 5, 6],
    spots: { chimney: [x(18.5), 19, 8], dome: [x(48), 23, 8], smoke: [x(17), 33, 9] },
    key: [tank ? 74 : 84, 43],
  };
}

/** An engine, or a tender. */
export function engine(sort, traits) {
  const { colour, fitted } = traits;
  switch (sort) {
    case "tank_engine":
    case "tender_engine":
    case "lone_engine":
      return steam(sort, traits);
    case "streamlined_engine":
      return {
        ...ENGINE,
        body: path("M8 47Q9 25 34 21L92 19H108V47Z", colour) + path("M24 22.5l2 -6h8l1 5Z", COAL),
        roof: "M82 20.5Q96 14.5 112 18V20Z",
        panes: [
          [87, 23, 7, 8],
          [97, 23, 7, 8],
        ],
        over: path("M8.5 41Q30 36 108 36", "none"),
        side: [36, 24, 70, 20],
        lines: [[30, 32, 78, 6]],
        mark: [62, 31, 40],
        numbers: [[97, 39], null],
        plan: "two_both",
        driven: [12, 104],
        key: [78, 43],
        front: [11, 37],
        panel: [9, 35, 5, 6],
      };
    case "shunter":
      return {
        ...ENGINE,
        right: 106,
        left: 12,
        body: path("M14 46V29Q14 27 16 27H76V46Z", colour) + path("M76 46V17H104V46Z", colour),
        roof: "M73 18.5Q90 11.5 107 18.5Z",
        panes: [
          [80, 21, 8, 9],
          [92, 21, 8, 9],
        ],
        doors: [[91, 31, 9, 15]],
        over: vents(22, 31, 5) + vents(52, 31, 5) + rect(30, 22, 4, 5, IRON),
        side: [14, 28, 62, 18],
        mark: [45, 41.5, 40],
        numbers: [[84, 38], null],
        plan: "three",
        driven: [18, 100],
        front: [14, 36],
        panel: [12, 30, 5, 6],
        yellow: [13.4, 28],
        spots: { warning: [14, 37, 8] },
        horns: [[82, 14.6]],
      };
    case "box_cab":
      return {
        ...ENGINE,
        left: 16,
        right: 104,
        body: path("M18 46V20H102V46Z", colour),
        roof: "M14 20.5Q18 13 30 12.5H90Q102 13 106 20.5Z",
        panes: [
          [22, 23, 10, 10],
          [88, 23, 10, 10],
          [55, 23, 10, 10],
        ],
        doors: [
          [35, 22, 8, 24],
          [77, 22, 8, 24],
        ],
        over:
          rect(48, 9.5, 24, 3.4, IRON) +
          vents(47, 36, 3) +
          vents(67, 36, 3) +
          onTop(fitted, 60, 9.5, ""),
        side: [18, 20, 84, 26],
        mark: [60, 41, 30],
        numbers: [
          [27, 41],
          [93, 41],
        ],
        plan: "two",
        driven: [22, 98],
        front: [18, 36],
        panel: [16, 30, 5, 6],
        horns: [[30, 12.5]],
        spots: { pantograph: [60, 7, 9] },
      };
    case "electric": {
      const drawn = path("M52 14L60 9L68 14M60 9L54 4H66Z", "none", ' stroke-width="1.2"');
      return { ...diesel("diesel", traits), over: onTop(fitted, 60, 14, drawn) };
    }
    case "engine":
      return {
        ...ENGINE,
        body: path("M10 46V24Q10 19 16 19H104Q110 19 110 24V46Z", colour),
        side: [12, 22, 96, 24],
        mark: [60, 38, 40],
        numbers: [
          [24, 41],
          [96, 41],
        ],
        panel: [10, 30, 5, 6],
      };
    case "tender":
    case "smooth_tender": {
      const smooth = sort === "smooth_tender";
      return {
        ...ENGINE,
        left: 24,
        right: 96,
        body:
          (smooth
            ? path("M26 46V20H94V46Z", colour)
            : path("M26 46V28L23 24H97L94 28V46Z", colour)) + rect(24, 44, 72, 3, IRON),
        roof: "",
        over: smooth ? path("M26 20Q60 14 94 20Z", COAL) : path("M28 24Q60 8 92 24Z", COAL),
        side: [26, 28, 68, 16],
        lines: [[26, 28, 68, 16]],
        mark: [60, 38, 56],
        numbers: [null, [86, 42]],
        plan: "three",
        driven: [28, 92],
        front: [96, 34],
        panel: null,
      };
    }
    default:
      return diesel(sort, traits);
  }
}
