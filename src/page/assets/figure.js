// SPDX-License-Identifier: MIT
// A small figure beside the field in hand: where the gauge goes. Not to scale; heights are drawn large.

const space = "http://www.w3.org/2000/svg";

function shape(name, properties, text) {
  const element = document.createElementNS(space, name);
  for (const [key, value] of Object.entries(properties)) element.setAttribute(key, value);
  if (text) element.textContent = text;
  return element;
}

const line = (x1, y1, x2, y2, look = "ink") => shape("line", {x1, y1, x2, y2, class: look});
const path = (d, look = "ink") => shape("path", {d, class: look});
const word = (x, y, text, anchor = "middle") => shape("text", {x, y, "text-anchor": anchor}, text);
const crown = (x, y = 78) => path(`M${x - 4} ${y} a4 5 0 0 1 8 0 z`, "solid");

// What is measured, between two arrows: within it, or from outside where it is small.
function gap(x, top, bottom) {
  const out = bottom - top < 24 ? -1 : 1;
  const head = (y, way) => path(`M${x - 4} ${y + 6 * way} L${x} ${y} L${x + 4} ${y + 6 * way}`, "gauge");
  const stem = out > 0 ? [line(x, top, x, bottom, "gauge")] : [line(x, top - 14, x, top, "gauge"), line(x, bottom, x, bottom + 14, "gauge")];
  return [...stem, head(top, out), head(bottom, -out)];
}
const across = (left, right, y) => [line(left, y, right, y, "gauge"), path(`M${left + 7} ${y - 4} L${left} ${y} L${left + 7} ${y + 4}`, "gauge"),
  path(`M${right - 7} ${y - 4} L${right} ${y} L${right - 7} ${y + 4}`, "gauge")];
const finger = (x, y) => path(`M${x - 6} ${y - 24} q6 -6 12 0 v14 q-6 10 -12 0 z`, "soft");

const frets = [50, 78, 104, 128, 150, 170, 189];
// From the side: nut at the left, board, crowns, bridge and saddle at the right.
const neck = () => [path("M10 83 H206 V78 H20 M10 83 V66 H20 V83", "ink"), path("M206 78 V100 M206 86 H310", "ink"),
  path("M262 86 L268 76 H302 L306 86 M279 76 V58 q4 -4 8 0 V76", "ink"), ...frets.map((x) => crown(x))];
const strung = (d) => path(d, "string");
const board = () => path("M30 92 H290 V84 Q160 64 30 84 Z", "ink");

const figures = {
  before: () => [...neck(), strung("M2 74 L20 65 L283 56 L296 76")],
  relief: () => [path("M10 83 V66 H20 V83", "ink"), path("M10 83 Q120 99 206 83 M20 79 Q120 95 206 78", "ink"),
    ...[50, 78, 104, 128, 150, 170].map((x, i) => crown(x, [82, 85, 86.6, 86.4, 84.6, 82.4][i])), crown(196, 79),
    strung("M2 74 L20 66 L46 77 L196 73 L310 60"), finger(44, 78), finger(200, 74), ...gap(117, 75, 86), word(117, 112, "the gap in the middle")],
  crowns: () => [board(), ...[60, 110, 160, 210, 260].map((x) => path(`M${x - 14} 76 q14 -22 28 0 z`, "solid")),
    path("M102 66 q8 6 16 0 l-2 -6 h-12 z", "paper"), path("M102 65 q8 6 16 0", "gauge"), ...gap(110, 34, 68), word(110, 26, "a worn spot"), strung("M20 60 H300")],
  first: () => [...neck(), strung("M2 72 L20 65 L104 73 L120 70 L283 56 L296 76"), finger(112, 72), ...gap(50, 68, 74), word(50, 112, "fret 1"), word(104, 112, "3")],
  action: () => [...neck(), strung("M2 74 L20 65 L283 54 L296 76"), ...gap(189, 58, 74), word(189, 112, "fret 12")],
  height: () => [path("M60 104 H304 V72 H176 V104 M144 104 V72 H60", "ink"), path("M146 103 V42 Q160 30 174 42 V103 Z", "ink"),
    strung("M20 44 L160 36 L214 72"), ...gap(124, 38, 104), word(116, 60, "height", "end"), ...across(162, 212, 88), word(220, 92, "to the pin", "start")],
  bridge: () => [...neck(), path("M30 70 H292 V64 H30 Z", "soft"), ...gap(270, 66, 76), word(150, 54, "straightedge on the frets")],
  buzz: () => [...neck(), strung("M2 74 L20 65 L283 56 L296 76"), path("M20 65 Q150 84 283 56", "string"), ...gap(78, 66, 75), word(100, 112, "touches here")],
  cents: () => [...neck(), strung("M2 74 L20 65 L189 73 L283 56 L296 76"), finger(184, 72), word(189, 112, "fret 12, against the octave")],
  scale: () => [...neck(), strung("M2 74 L20 65 L283 56 L296 76"), ...across(20, 283, 32), word(150, 24, "scale, and setback")],
  radius: () => [path("M50 96 V84 Q160 46 270 84 V96 Z", "ink"), path("M50 70 Q160 32 270 70", "gauge"), word(160, 30, "radius gauge")],
  crown: () => [board(), path("M130 72 q30 -54 60 0 z", "solid"), ...gap(212, 44, 72), word(224, 62, "crown", "start"), line(186, 44, 222, 44, "thin")],
  gauge: () => [shape("circle", {cx: 160, cy: 60, r: 26, class: "ink"}), shape("circle", {cx: 160, cy: 60, r: 12, class: "soft"}), ...gap(204, 34, 86),
    line(160, 34, 212, 34, "thin"), line(160, 86, 212, 86, "thin"), word(216, 64, "gauge", "start"), word(160, 112, "core inside the winding")],
  width: () => [path("M40 92 V58 H280 V92 Z", "ink"), ...[70, 106, 142, 178, 214, 250].map((x) => shape("circle", {cx: x, cy: 55, r: 4, class: "solid"})),
    ...across(40, 280, 108), ...across(40, 66, 34), word(54, 24, "edge"), word(160, 124, "width of the board")],
  seat: () => [path("M120 104 H250 V72 H150 V104", "ink"), path("M120 104 V44 H150 V104 Z", "ink"), strung("M60 66 L120 46 L150 42 L280 50"),
    ...gap(100, 72, 104), line(92, 72, 150, 72, "thin"), line(92, 104, 120, 104, "thin"), word(90, 92, "bottom to board", "end")],
  saddle: () => [path("M50 100 V70 Q160 44 270 70 V100 Z", "ink"), ...[74, 108, 142, 178, 212, 246].map((x, i) => shape("circle", {cx: x, cy: [62, 55.5, 52.5, 52.5, 55.5, 62][i] - 3, r: 3.5, class: "solid"})),
    ...across(74, 246, 34), word(160, 24, "outer strings apart"), ...across(50, 270, 112)],
  feeler: () => [path("M40 80 H220 V74 H40 Z", "soft"), path("M40 66 H220 V62 H40 Z", "soft"), path("M40 90 H200 V94 H40 Z", "soft"), shape("circle", {cx: 52, cy: 77, r: 5, class: "ink"}), word(240, 82, "feelers", "start")],
};

// What lies level with the strings needs no room above it.
const low = ["before", "first", "action", "buzz", "cents", "relief"];

export function draw(name) {
  const figure = shape("svg", {viewBox: low.includes(name) ? "0 40 320 80" : "0 12 320 116", "aria-hidden": "true", focusable: "false"});
  figure.append(...(figures[name] || figures.before)());
  return figure;
}
