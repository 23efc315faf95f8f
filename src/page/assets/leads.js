// SPDX-License-Identifier: MIT
// From a finding to the reading it rests on, and from a field to what was found of it.
import {by, fill, make} from "./dom.js";

// A field that ends in a dot goes on with the place of the string.
const fieldOfCodes = [
  ["readings.*.relief.gap", "back-bow relief-low relief-high relief-first relief-unknown relief-as-target short-by-bow wrong-way"],
  ["instrument.rod", "rod-unknown"], ["instrument.rod_state", "rod-limit"],
  ["readings.*.frets", "fret-worn fret-high crowns-unread nut-over-dent"], ["instrument.crown", "crown-thin"],
  ["readings.*.first.", "slot-low slot-high zero-fret-low zero-fret-high nut-as-target make-nut"],
  ["readings.*.action.", "saddle-low saddle-high aim-raised aim-short at-edge adjust-limit make-saddle saddle-curve reading-order short-by-bridge"],
  ["readings.*.saddle_height.treble", "saddle-unread saddle-moved protrusion-low protrusion-high"], ["readings.*.bridge_top.treble", "neck-angle"],
  ["nut.seat_to_board", "seat-shallow"], ["nut.edge.treble", "edge-narrow"], ["saddle.pin_distance.treble", "break-angle-low"], ["saddle.setback.treble", "off-saddle"],
  ["readings.*.humidity", "climate moved"], ["readings.*.condition.bridge", "bridge-lifted"], ["readings.*.condition.braces", "braces-loose"],
  ["readings.*.condition.tuned", "not-tuned"], ["readings.*.condition.saddle", "saddle-loose"],
  ["strings.*.gauge", "string-unknown string-stiff"], ["strings.*.core", "core-assumed"],
  ["readings.*.cents.", "tune-out tune-left cents-unused peak-short"], ["readings.*.buzz", "technique unexplained too-close"],
];
const byCode = new Map(fieldOfCodes.flatMap(([field, codes]) => codes.split(" ").map((code) => [code, field])));

// The field a finding rests on, of the visit that counts; "" where the page has none for it.
export function fieldOfFinding({code, string}, last) {
  const place = String((string || 1) - 1);
  const field = (byCode.get(code) || "").replace(/^readings\.\*/, `readings.${last}`).replace(/^strings\.\*/, `strings.${place}`);
  const path = field.endsWith(".") ? field + place : field;
  return path && inputOf(path) ? path : "";
}

// The input of a path, or where one figure stands for several, theirs.
function inputOf(path) {
  for (let at = path; at.includes("."); at = at.slice(0, at.lastIndexOf("."))) {
    const found = by("form").querySelector(`[name="${CSS.escape(at)}"]`);
    if (found) return found;
  }
  return null;
}

export const wordsOf = (code) => code.replaceAll("-", " ");

const back = (code) => make("li", {}, make("button", {type: "button", class: "quiet goes", "data-finding": code}, `Found: ${wordsOf(code)}`));

// Beside each field what was found of it, each kind once.
export function show(findings, last) {
  const found = new Map();
  for (const one of findings) {
    const path = fieldOfFinding(one, last);
    const place = path && inputOf(path).closest(".field").querySelector(".leads");
    if (place) found.set(place, (found.get(place) || new Set()).add(one.code));
  }
  for (const place of by("form").querySelectorAll(".leads")) {
    if (found.has(place) || place.childElementCount) fill(place, [...(found.get(place) || [])].map(back));
  }
}

export function begin() {
  by("form").addEventListener("click", ({target}) => {
    const code = target.dataset?.finding;
    if (code) by("findings").querySelector(`[data-code="${code}"]`)?.focus();
  });
}
