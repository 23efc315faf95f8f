// SPDX-License-Identifier: MIT
// Whatever else a sheet may say, made of the program's own list of fields: rare, and so behind a fold, under the name of the
// part of the sheet it belongs to.
import {sections} from "./fields.js";

const titles = {job: "The job", shop: "The shop", instrument: "The instrument", nut: "Nut", saddle: "Saddle", readings: "This visit", targets: "Ranges and targets",
  attack: "How hard it is picked", tools: "Tools", limits: "Limits", allowances: "Allowances", model: "How the strings are held", top: "The sheet"};
// What belongs to a kind of instrument and not to a sheet, and what the page sets itself.
const elsewhere = /^(sillet|units|profile|strings|styles|attacks|materials|plausible|readings\.(relief|frets|buzz))(\.|$)/;
const kindOf = {figure: "one", count: "one", text: "one", choice: "choice", ends: "ends", each: "each", target: "band", targets: "bands"};
const rows = ["files", "make", "readings.confirmed"];

function fieldOf({path, label, hint, kind, choices}) {
  const at = path.replace(/^readings\./, "readings.*.");
  const shown = kind === "choice" ? [["", "not given"], ...choices] : undefined;
  return {path: at, kind: rows.includes(path) ? "row" : kindOf[kind], label: label || path, words: shown, hint: hint || "", wide: kind === "text" && /notes|contact/.test(path)};
}

export function others(known, sheet) {
  const placed = sections.flatMap((section) => section.fields).filter((field) => field.kind).map((field) => field.path.replace(/\.\*/g, ""));
  const isPlaced = (path) => placed.some((one) => path === one || path.startsWith(`${one}.`));
  const left = known.filter((one) => !elsewhere.test(one.path) && !isPlaced(one.path) && (rows.includes(one.path) || kindOf[one.kind]));
  // The pick strength by a word and as a force are two ways to say the same.
  const force = known.filter((one) => /^attack\./.test(one.path) && sheet.shape("attack") !== "one");
  const groups = new Map();
  for (const one of [...left, ...force]) {
    const part = one.path.includes(".") ? one.path.split(".")[0] : "top";
    if (!groups.has(part)) groups.set(part, {title: titles[part] || part, fields: []});
    groups.get(part).fields.push(fieldOf(one));
  }
  const strings = {title: "Strings", fields: [{path: "strings", kind: "table", label: "Strings, known otherwise", suffix: "-more",
    row: [["hz", "Hz"], ["unit_mass", "g/m"], ["modulus", "GPa"]]}]};
  return known.length ? [{id: "more", title: "Everything else", folded: true, lead: "Rarely needed. Pale figures are the profile's or the usual ones.", groups: [...groups.values(), strings]}] : [];
}
