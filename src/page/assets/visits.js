// SPDX-License-Identifier: MIT
// The visits of a sheet: each can be opened, corrected, and removed. The plan is of the last.
import {by, make, tell} from "./dom.js";

let rebuilt; // called when another visit is shown, or one is gone

function named(sheet, visit) {
  const date = sheet.own.get(`readings.${visit}.date`);
  return `Visit ${visit + 1}${date ? `, ${date}` : ""}`;
}

function choose(sheet, visit) {
  sheet.chosen = visit === sheet.visits - 1 ? null : visit;
  sheet.rest();
  rebuilt();
}

function remove(sheet, visit) {
  const name = named(sheet, visit);
  sheet.rest();
  sheet.removeRow("readings", visit);
  sheet.rest();
  sheet.chosen = null;
  rebuilt();
  tell(`${name} was removed.`, "Put it back", () => { if (sheet.undo()) rebuilt(); });
}

export function show(sheet) {
  const count = sheet.visits, shown = sheet.last;
  by("visits").textContent = count < 2 ? "" : shown < count - 1 ? "An earlier visit: what is corrected here changes the history. The plan is of the last one." : "Earlier visits are kept in the sheet; the plan is of this one.";
  by("visit-choice").replaceChildren(); // made anew, with what they do
  by("visit-away").replaceChildren();
  if (count < 2) return;
  by("visit-choice").append(
    make("label", {}, make("span", {class: "unseen"}, "The visit shown"), make("select", {id: "visit-shown", onchange: (event) => choose(sheet, Number(event.target.value))},
      Array.from({length: count}, (_, k) => make("option", {value: String(k), selected: k === shown}, named(sheet, k))))));
  by("visit-away").append(make("button", {type: "button", class: "quiet", id: "visit-remove", onclick: () => remove(sheet, shown)}, "Remove this visit"));
}

export function begin(whenChanged) {
  rebuilt = whenChanged;
}
