// SPDX-License-Identifier: MIT
// The fields: made from the table, filled from the sheet, flagged with the sheet reader's own words.
import {by, fill, make, rowsOrCards} from "./dom.js";
import {draw} from "./figure.js";
import {makes, sections} from "./fields.js";
import {others} from "./others.js";

let sheet;
let changed;   // called when a value has changed
let rebuilt;   // called when other fields are wanted
let left;      // called when a field was left, with the complaints that may be shown now
let typing = false; // a value is being written, and is not yet what was meant
let latest = [[], false];

const here = (path) => path.replace("*", sheet.last);
const idOf = (path) => `f-${path.replaceAll(".", "-")}`;

// A figure with its unit, as "0.07 mm", is written smaller where there is little room.
const sizeOf = (text) => (text.length > 5 ? "long" : "");

function input(path, label, extra = {}) {
  const value = sheet.own.get(path) || "";
  return make("input", {id: idOf(path), name: path, value, class: sizeOf(value), placeholder: sheet.typical(path),
    autocomplete: "off", autocapitalize: "off", spellcheck: "false", "aria-label": label, ...extra,
    oninput: ({target}) => { setTyping(true); target.className = sizeOf(target.value); sheet.set(path, target.value); changed(); }});
}

function choice(path, {words, label, usual = ""}) {
  const blank = words.some(([word]) => word === "");
  const now = sheet.own.get(path) || (blank ? "" : sheet.typical(path) || usual);
  const known = words.some(([word]) => word === now) ? words : [...words, [now, now]];
  const typical = sheet.typical(path);
  return make("select", {id: idOf(path), name: path, "aria-label": label,
    onchange: (event) => { sheet.set(path, event.target.value); changed(); }},
    known.map(([word, shown]) => make("option", {value: word, selected: word === now},
      word === "" && typical ? (known.find(([other]) => other === typical) || [0, typical])[1] : shown)));
}

function stringName(string) {
  const note = sheet.value(`strings.${string}.note`);
  return note ? `string ${string + 1}, ${note}` : `string ${string + 1}`;
}

// One small field of a row, its name over it. Under a reading with a target stand its range, and what it was the visit before.
function cell(name, control) {
  const path = control.name || "";
  return make("label", {class: "cell"}, make("span", {class: "cell-name"}, name), control, beside(path));
}

const ranged = /^readings\.\d+\.(humidity|relief\.gap|first\.\d+|action\.\d+)$/;

function beside(path) {
  const was = !path.endsWith(".date") && path.startsWith(`readings.${sheet.last}.`) && sheet.last > 0 ? sheet.own.get(path.replace(/^readings\.\d+/, `readings.${sheet.last - 1}`)) : "";
  return [ranged.test(path) ? make("span", {class: "range", "data-range": path}) : null, was ? make("span", {class: "was"}, `was ${was}`) : null];
}

// More strings than these stand in two even rows.
const inOneRow = 7;
const evenly = (count) => (count > inOneRow ? ` across-${Math.ceil(count / 2)}${count % 4 === 0 ? " by-four" : ""}` : "");

const places = {
  one: (path, field) => [input(path, field.label)],
  choice: (path, field) => [choice(path, field)],
  radius: (path, field) => sheet.shape(path) === "one" || !sheet.hasAny(path) ? [input(path, field.label)]
    : [["nut", "at the nut"], ["end", "at the end"]].map(([key, name]) => cell(name, input(`${path}.${key}`, `${field.label} ${name}`))),
  scale: (path, field) => sheet.shape(path) !== "ends" ? [input(path, field.label)]
    : [["treble", "string 1"], ["bass", `string ${sheet.strings}`], ["square", "square at fret"]].map(([key, name]) =>
      cell(name, input(`${path}.${key}`, `${field.label}, ${name}`))),
  each(path, field) {
    const shape = sheet.shape(path);
    if (shape === "one") return [cell("all strings", input(path, `${field.label}, all strings`))];
    if (shape === "ends") return places.ends(path, field);
    return Array.from({length: sheet.strings}, (_, string) =>
      cell(`${string + 1} ${sheet.value(`strings.${string}.note`)}`, input(`${path}.${string}`, `${field.label}, ${stringName(string)}`)));
  },
  ends(path, field) {
    const shape = sheet.shape(path);
    if (shape === "one") return [cell("all strings", input(path, field.label))];
    if (shape === "list") return Array.from({length: sheet.count(path)}, (_, string) =>
      cell(String(string + 1), input(`${path}.${string}`, `${field.label}, ${stringName(string)}`)));
    return [["treble", `string 1`], ["bass", `string ${sheet.strings}`]].map(([key, name]) =>
      cell(name, input(`${path}.${key}`, `${field.label}, ${name}`)));
  },
  band(path, field) {
    if (sheet.shape(path) === "one") return [cell("aim", input(path, `${field.label}, aim`))];
    return ["low", "aim", "high"].map((key) => cell(key, input(`${path}.${key}`, `${field.label}, ${key}`)));
  },
  bands(path, field) {
    if (sheet.shape(path) !== "ends") return places.band(path, field);
    return [["treble", "treble"], ["bass", "bass"]].flatMap(([key, name]) =>
      ["low", "aim", "high"].map((side) => cell(`${name}, ${side}`, input(`${path}.${key}.${side}`, `${field.label}, ${name}, ${side}`))));
  },
  attack: (path, field) => sheet.shape(path) === "one" || !sheet.has(path) ? [choice(path, field)]
    : [make("p", {class: "hint"}, "In newtons, as the sheet has it.")],
  // A list of bare figures in one field, a comma between two.
  row(path, field) {
    const now = Array.from({length: sheet.count(path)}, (_, k) => sheet.own.get(`${path}.${k}`) || "").join(", ");
    return [make("input", {id: idOf(path), name: path, value: sheet.has(path) ? now : "", placeholder: Array.from({length: sheet.count(path)}, (_, k) => sheet.typical(`${path}.${k}`)).join(", "),
      autocomplete: "off", spellcheck: "false", "aria-label": field.label, oninput: (event) => {
        setTyping(true);
        sheet.remove(path);
        event.target.value.split(/[,;]/).map((one) => one.trim()).filter(Boolean).forEach((one, k) => sheet.set(`${path}.${k}`, one));
        changed();
      }})];
  },
  table(path, field) {
    return [rowsOrCards({class: "entry"}, ["No.", ...field.row.map(([, name]) => name)], Array.from({length: sheet.strings}, (_, string) => [String(string + 1),
      ...field.row.map(([key, name]) => [key === "make"
        ? choice(`${path}.${string}.make`, {words: [["", "not given"], ...makes], label: `${name}, string ${string + 1}`})
        : input(`${path}.${string}.${key}`, `${name}, string ${string + 1}`)])]))];
  },
  rows(path, field) {
    const rows = Array.from({length: sheet.count(path)}, (_, row) => make("div", {class: "row"},
      field.row.map(([key, name]) => cell(name, input(`${path}.${row}.${key}`, `${field.label} ${row + 1}, ${name}`))),
      make("button", {type: "button", class: "quiet", "aria-label": `Take out row ${row + 1}`,
        onclick: () => { sheet.removeRow(path, row); rebuilt(path); }}, "Take out")));
    return [...rows, make("button", {type: "button", id: `${idOf(path)}-add`, onclick: () => {
      const row = sheet.count(path);
      field.row.forEach(([key]) => sheet.set(`${path}.${row}.${key}`, ""));
      rebuilt(`${path}.${row}.${field.row[0][0]}`);
    }}, field.add)];
  },
  crowns(path, field) {
    const listed = sheet.shape(path) === "list";
    const state = listed ? "listed" : sheet.own.get(path) || "";
    const pick = make("select", {id: idOf(path), name: path, "aria-label": field.label, onchange: (event) => {
      sheet.remove(path);
      if (event.target.value === "listed") ["string", "fret", "off"].forEach((key) => sheet.set(`${path}.0.${key}`, ""));
      else sheet.set(path, event.target.value);
      rebuilt(path);
    }}, [["", "not looked at"], ["sound", "sound, none worn or high"], ["listed", "some are worn or high"]].map(([word, shown]) =>
      make("option", {value: word, selected: word === state}, shown)));
    const rows = listed ? places.rows(path, {...field, label: "Crown",
      row: [["string", "String"], ["fret", "Fret"], ["off", "Off by, - is a worn spot"]], add: "Add a crown"}) : [];
    return [pick, ...rows];
  },
};

function fieldOf(field) {
  if (!field.kind) return null;
  const path = here(field.path);
  const controls = places[field.kind](path, field);
  const single = controls.length === 1 && controls[0].id === idOf(path);
  const hint = field.hint || (field.kind === "one" && /\d/.test(field.note || "") ? field.note : "");
  const flagsId = `${idOf(path)}${field.suffix || ""}-flags`;
  const box = make("div", {class: `field kind-${field.kind}${field.wide ? " wide" : ""}`, "data-path": path, "data-figure": field.figure || ""});
  box.append(single ? make("label", {class: "field-name", for: idOf(path)}, field.label) : make("span", {class: "field-name"}, field.label),
    make("div", {class: `controls${field.kind === "each" ? evenly(controls.length) : field.kind === "table" ? " scroll" : ""}`}, controls), single && field.kind === "one" ? make("p", {class: "beside"}, beside(path)) : "", hint ? make("p", {class: "hint"}, hint) : "",
    make("ul", {class: "flags", id: flagsId, "aria-live": "polite"}), make("ul", {class: "leads"}));
  return box;
}

function sectionOf(section) {
  const figure = section.figure && make("figure", {class: "where"}, draw(section.figure));
  const body = [section.lead && make("p", {class: "lead"}, section.lead), figure,
    section.groups ? section.groups.map((group) => make("div", {class: "group"}, make("h4", {}, group.title), make("div", {class: "fields"}, group.fields.map(fieldOf))))
      : make("div", {class: "fields"}, section.fields.map(fieldOf))];
  const title = make("h3", {id: `s-${section.id}`}, section.title);
  return section.folded
    ? make("details", {class: "section", "data-section": section.id}, make("summary", {}, title), body)
    : make("section", {class: "section", "data-section": section.id, "aria-labelledby": `s-${section.id}`}, title, body);
}

// The figure shows what the field in hand asks for.
function showWhere(event) {
  const section = event.target.closest(".section");
  const figure = section && section.querySelector("figure.where");
  const wanted = event.target.closest(".field")?.dataset.figure;
  if (figure && wanted && figure.dataset.shown !== wanted) {
    figure.replaceChildren(draw(wanted));
    figure.dataset.shown = wanted;
  }
}

// known: every field there is; those without a place of their own come last.
export function build(inHand, onChange, onRebuild, known) {
  [sheet, changed, rebuilt] = [inHand, onChange, onRebuild];
  const open = new Set([...document.querySelectorAll("details.section[open]")].map((one) => one.dataset.section));
  const form = by("form");
  form.replaceChildren(...sections.map(sectionOf), ...others(known, sheet).map(sectionOf));
  apply(sheet.applies);
  form.querySelectorAll("details.section").forEach((one) => { one.open = open.has(one.dataset.section); });
}

// Paths, and all that they are part of.
function withAbove(paths) {
  const all = new Set();
  for (const path of paths) for (let at = path; at && !all.has(at); at = at.slice(0, Math.max(0, at.lastIndexOf(".")))) all.add(at);
  return all;
}

// Only what this instrument has is asked for, and what the sheet says all the same; everything where a sheet with errors
// leaves open what that is.
export function apply(paths) {
  const has = withAbove(paths || []), said = withAbove(sheet.own.keys());
  for (const box of by("form").querySelectorAll(".field[data-path]")) {
    const path = box.dataset.path, plain = path.replace(/^readings\.\d+\./, "readings.");
    box.hidden = paths !== null && !has.has(plain) && !said.has(path) && !box.contains(document.activeElement);
  }
  for (const group of by("form").querySelectorAll(".group")) group.hidden = ![...group.querySelectorAll(".field")].some((one) => !one.hidden);
}

function setTyping(now) {
  typing = now;
  document.body.classList.toggle("typing", now);
}

// Whoever leaves a field, or ends it with Enter, has written what was meant.
function leave() {
  if (!typing && latest[0].length === 0) return;
  setTyping(false);
  sheet?.rest();
  left(...latest);
}

export function begin(whenLeft) {
  left = whenLeft;
  by("form").addEventListener("focusin", showWhere);
  by("form").addEventListener("focusout", () => setTimeout(leave, 0));
  by("form").addEventListener("change", (event) => event.target.tagName === "SELECT" && leave());
  by("form").addEventListener("submit", (event) => { event.preventDefault(); leave(); });
  by("form").addEventListener("keydown", (event) => event.key === "Enter" && event.target.tagName === "INPUT" && leave());
}

export function focusOn(path) {
  const field = document.getElementById(idOf(path)) || document.querySelector(`[name^="${CSS.escape(path)}"]`)
    || document.getElementById(`${idOf(path)}-add`);
  if (!field) return false;
  const folded = field.closest("details");
  if (folded) folded.open = true;
  field.focus();
  return true;
}

// The fields a path is about: itself, those in it, else those it stands in.
function inputsAt(path) {
  const all = [...by("form").querySelectorAll("[name]")];
  for (let at = path; at; at = at.slice(0, Math.max(0, at.lastIndexOf(".")))) {
    const exact = all.filter((one) => one.name === at);
    if (exact.length) return exact;
    const within = all.filter((one) => one.name.startsWith(`${at}.`));
    if (within.length) return at.includes(".") ? within : [];
  }
  return [];
}

// Whether a complaint is about what is being written: the value itself, or the group it is one of, which is not whole
// before it is left.
function isWaiting(complaint, inputs) {
  const active = document.activeElement;
  if (!inputs.includes(active)) return false;
  return active.name === complaint.path ? typing : true;
}

function remedy(complaint, inputs) {
  const word = complaint.text.match(/did you mean ([^?]+)\?/)?.[1];
  if (!word || inputs.length !== 1 || inputs[0].name !== complaint.path || inputs[0].tagName !== "INPUT") return null;
  return make("button", {type: "button", class: "quiet", onclick: () => { sheet.set(complaint.path, word); rebuilt(complaint.path); }}, `Use ${word}`);
}

// Flags beside the fields. Given back: what has no field, and what waits until a field is left.
export function flag(complaints, stale) {
  latest = [complaints, stale];
  const flags = new Map([...by("form").querySelectorAll(".flags")].map((list) => [list, []]));
  const marks = new Map();
  const waiting = [], homeless = [];
  for (const complaint of complaints) {
    const inputs = inputsAt(complaint.path);
    const list = inputs[0]?.closest(".field")?.querySelector(".flags");
    if (!list) { homeless.push(complaint); continue; }
    if (isWaiting(complaint, inputs)) { waiting.push(complaint); continue; }
    flags.get(list).push(make("li", {class: complaint.severity}, complaint.text, remedy(complaint, inputs)));
    for (const one of inputs) marks.set(one, [complaint.severity === "error", list.id]);
    const folded = list.closest("details");
    if (folded && complaint.severity === "error") folded.open = true;
  }
  for (const [list, lines] of flags) if (lines.length || list.childElementCount) fill(list, lines);
  for (const one of by("form").querySelectorAll("[aria-invalid]")) if (!marks.has(one)) unmark(one);
  for (const [one, [wrong, id]] of marks) {
    one.setAttribute("aria-invalid", String(wrong));
    one.setAttribute("aria-describedby", id);
  }
  return {waiting, homeless};
}

function unmark(one) {
  one.removeAttribute("aria-invalid");
  one.removeAttribute("aria-describedby");
}
