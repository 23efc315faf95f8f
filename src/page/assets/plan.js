// SPDX-License-Identifier: MIT
// The plan as the page shows it: every figure is the result's own; here it is only set in rows.
import {by, fill, make, rowsOrCards} from "./dom.js";
import {fieldOf} from "./glance.js";
import {fieldOfFinding, wordsOf} from "./leads.js";

let units = "mm";

const levels = {stop: "Stop", act: "Do", watch: "Watch", fine: "Note"};

// Which way a figure is rounded: a cut down and a place to stop at up, since wood does not go back on; what was read, and
// all else, to the nearest, half a step up.
const nearest = (steps) => Math.sign(steps) * Math.floor(Math.abs(steps) + 0.5 + 1e-9);
const down = (steps) => Math.floor(steps + 1e-7);
const up = (steps) => Math.ceil(steps - 1e-7);

// A length as the program itself writes it: hundredths; of an inch thousandths, under ten of them halves, under half of one
// tenths.
function length(mm, way = nearest) {
  if (mm == null) return "–";
  const inches = units === "in", size = Math.abs(mm) + 1e-9;
  const grain = !inches ? 0.01 : size >= 0.254 ? 0.0254 : size >= 0.0127 ? 0.0127 : 0.00254;
  const told = way(mm / grain) * grain;
  const text = inches ? (told / 25.4).toFixed(4).replace(/0$/, "") : told.toFixed(2);
  return /^-0\.0+$/.test(text) ? text.slice(1) : text;
}

const number = (value, decimals = 2) => (value == null ? "–" : value.toFixed(decimals).replace(/^-(0(\.0+)?)$/, "$1"));
const unitsInWords = () => (units === "in" ? "inches" : units);
const noteOf = (result, string) => result.strings[string].note || "";

const table = (caption, heads, rows) => make("div", {class: "scroll", role: "region", "aria-label": `Table: ${caption}`, tabindex: "0"}, rowsOrCards({caption}, heads, rows));

// The table of a part: a column in which no string has a figure is left out.
function partTable(caption, heads, rows) {
  const told = heads.map((_, k) => k < 2 || rows.some((row) => row[k][0] !== "–"));
  return table(caption, heads.filter((_, k) => told[k]), rows.map((row) => row.filter((_, k) => told[k])));
}

// Turns of a screw, as a hand counts them: "1-3/8", "<1/8".
function eighths(turns) {
  if (!turns) { // none, or not known
    return "–";
  }
  const count = Math.floor(8 * Math.abs(turns) + 0.5 + 1e-9), whole = Math.floor(count / 8);
  const rest = ["", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"][count % 8];
  return count === 0 ? "<1/8" : [whole || "", rest].filter((part) => part !== "").join("-");
}

const figure = (mm, way) => [length(mm, way), {"data-mm": mm ?? ""}];

// What comes off: a dash where it is nothing.
function taken(mm) {
  const [text, attributes] = figure(mm, down);
  return [/^0\.0+$/.test(text) ? "–" : text, attributes];
}

function findings(result, last) {
  const worst = ["stop", "act", "watch", "fine"];
  const sorted = [...result.findings].sort((a, b) => worst.indexOf(a.level) - worst.indexOf(b.level));
  if (sorted.length === 0) return make("p", {}, "Nothing was found.");
  const groups = [];
  for (const one of sorted) {
    if (groups.at(-1)?.[0].code === one.code && groups.at(-1)[0].level === one.level) groups.at(-1).push(one);
    else groups.push([one]);
  }
  return make("ul", {class: "findings"}, groups.map(([first, ...more]) => make("li", {class: first.level, "data-code": first.code, tabindex: "-1"},
    make("strong", {}, levels[first.level]), " ", first.text, fieldOfFinding(first, last) ? goTo(fieldOfFinding(first, last), "To the reading", wordsOf(first.code)) : null,
    more.length ? make("details", {}, make("summary", {}, `The same of ${more.length} more`),
      make("ul", {}, more.map((one) => make("li", {"data-code": one.code}, one.text)))) : null)));
}

const goTo = (path, words, what) => make("button", {type: "button", class: "quiet goes", "data-field": path, "aria-label": `${words}: ${what}`}, words);

// The one to do next is marked; each leads to the reading it is about.
function steps(result, glance) {
  return make("ol", {class: "steps"}, result.steps.map((one, k) => make("li", {"data-stage": one.stage, class: glance.next?.step === k + 1 ? "is-next" : false},
    make("p", {class: "do"}, one.do), one.check ? make("p", {class: "check"}, make("strong", {}, "Check: "), one.check) : null,
    goTo(fieldOf(one.act, one.stage), "To the reading", glance.in_short[k]))));
}

const held = {first_open: "open", first_held2: "lying on the 2nd", first_held3: "held at the 3rd"};

function readings(result, key) {
  const now = result.stages[0];
  const after = result.stages.at(-1);
  return [
    make("p", {class: "relief-line"}, "Relief ", make("b", {"data-mm": now.relief ?? ""}, length(now.relief)), " now, ",
      make("b", {"data-mm": after.relief ?? ""}, length(after.relief)), ` after. All lengths in ${unitsInWords()}.`),
    table("Readings, now and after", ["String", `1st fret, ${held[key]}`, "after", "Action at 12", "after"],
      now.strings.map((one, k) => [`${k + 1} ${noteOf(result, k)}`, figure(result.nut.strings[k].now), figure(after.strings[k][key]),
        figure(result.saddle.strings[k].now), figure(result.saddle.strings[k].asked.action)])),
  ];
}

// What was done between two visits, in words.
const workOf = (one) => (one.work.length ? one.work.join(", ").replace(/, ([^,]*)$/, " and $1") : "no work");

const soft = (mm) => [length(mm), {class: "expected", "data-mm": mm ?? ""}];
const humidityOf = (one) => (one.humidity == null ? "–" : `${number(one.humidity, 0)} %`);
const cameOf = (one) => (one.ratio > 0 ? `${number(100 * one.ratio, 0)} %` : "");

// Where a table has room, a row for each visit, and one for what was expected of the work before it.
function visitsTable(result) {
  const rows = result.visits.flatMap((one, k) => {
    const told = [`${one.date || "no date"}`, [humidityOf(one)], figure(one.relief), ...one.read.map((mm) => figure(mm)), [cameOf(one)]];
    return k === 0 ? [told] : [[`after ${workOf(one)}`, [""], [""], ...one.predicted.map(soft), [""]], told];
  });
  return table("Visits so far", ["Visit", "Humidity", "Relief", ...result.strings.map((one) => String(one.number)), "Came"], rows);
}

// A figure with its name above it, and under it, paler, what was expected.
function pair(name, [text, attributes], expected) {
  return make("div", {}, make("dt", {}, name), make("dd", attributes || {}, text),
    expected ? make("dd", expected[1], expected[0]) : null);
}

// Where it has not, as on a phone: a card for each visit, in which the figures go on to as many lines as they need.
function visitCard(result, one, first) {
  const rest = [["Humidity", [humidityOf(one)]], ["Relief", figure(one.relief)], ...(one.ratio > 0 ? [["Came", [cameOf(one)]]] : [])];
  return make("li", {}, make("h3", {}, one.date || "no date"), first ? null : make("p", {class: "hint"}, `after ${workOf(one)}`),
    make("dl", {class: "visit-sizes"}, rest.map(([name, cell]) => pair(name, cell))),
    make("dl", {}, result.strings.map((string, k) => pair(`String ${string.number}`, figure(one.read[k]), first ? null : soft(one.predicted[k])))));
}

// What was read so far, and between two visits what was to come of the work: as the printed plan has it. The style shows
// the table or the cards, whichever there is room for.
function visits(result) {
  const many = result.strings.length > (units === "in" ? 5 : 8) ? "is-many" : "";
  return result.visits.length < 2 ? [] : [
    make("div", {class: `as-table ${many}`.trim()}, visitsTable(result)),
    make("ul", {class: `as-cards ${many}`.trim(), "aria-label": "Visits so far"}, result.visits.map((one, k) => visitCard(result, one, k === 0))),
    make("p", {class: "hint"}, `Action at the 12th fret, string 1 first, in ${unitsInWords()}. Paler: what was expected of the work between two visits. Came: how much of that change was measured.`)];
}

function weakest(clean) {
  let at = -1;
  clean.clean_force.forEach((value, fret) => {
    if (fret > 0 && value != null && (at < 0 || value < clean.clean_force[at])) at = fret;
  });
  return at;
}

function clearance(result) {
  const {strings, after, attack} = result.clearance;
  const cells = (clean, picked) => {
    const at = weakest(clean);
    const buzzes = (value) => (value != null && picked != null && Math.round(value * 100) < Math.round(picked * 100) ? {class: "short"} : {});
    const open = clean.clean_force[0];
    return [[number(open), buzzes(open)],
      [at < 0 ? "–" : `${number(clean.clean_force[at])} at fret ${at}, on ${clean.at_fret[at]}`, at < 0 ? {} : buzzes(clean.clean_force[at])]];
  };
  const assumed = (k) => result.strings[k].assumed.includes("core");
  return [table("The hardest pluck that rings clean, newtons", ["String", "Picked", "Open, now", "Weakest fretted, now", "Open, after", "Weakest fretted, after"],
    strings.map((one, k) => [`${k + 1} ${noteOf(result, k)}${assumed(k) ? "*" : ""}`, [number(attack.force[k])], ...cells(one, attack.force[k]), ...cells(after[k], attack.force[k])])),
  make("p", {class: "hint"}, "Underlined: less than it is picked with; it buzzes on the fret named, or near it. " +
    "Computed for an ideal string. Open strings are good to 2 %. A fretted note may buzz at up to a tenth less, at the last frets up to a third less." +
    (strings.some((one, k) => assumed(k)) ? " * Its core was not given: a usual one is assumed, and nothing is cut by this." : ""))];
}

const sure = (more = "") => make("p", {class: "hint"}, "Too high by: the whole way to the target, a minus is too low; ± is the measuring error, " +
  "two standard uncertainties." + more);

const verdicts = {leave: "leave", file: "deeper", raise: "raise", lower: "lower", wait: "wait"};

function nut(result) {
  return [partTable("Nut", ["String", "Verdict", "Too high by", "±", "First pass", "Feelers now", "Final feelers", "± of the feelers", "Stiffness may lift it by"],
    result.nut.strings.map((one, k) => [`${k + 1} ${noteOf(result, k)}`, [verdicts[one.verdict]], figure(one.deepen),
      figure(one.deepen_u == null ? null : 2 * one.deepen_u), taken(one.first_pass), figure(one.stack_now, up), figure(one.stack, up),
      figure(one.stack_u == null ? null : 2 * one.stack_u), figure(one.stack_bend)])), sure(" Put the feelers on the board, right in front of the nut; the gap decides.")];
}

function saddle(result) {
  const cut = result.saddle.bottom_cut;
  const words = cut && cut.caliper.treble != null ? make("p", {}, "Sand the bottom of the saddle until the caliper reads ",
    make("b", {"data-mm": cut.caliper.treble}, length(cut.caliper.treble, up)), " at string 1 and ",
    make("b", {"data-mm": cut.caliper.bass}, length(cut.caliper.bass, up)), ` at string ${result.strings.length}: the first pass.`) : null;
  const screws = result.saddle.strings.some((one) => one.turns != null);
  const more = screws ? ["First pass", "Screw turns"] : ["Top, first", "Top, in all", "Height now", "Height done", "Out of the bridge"];
  const made = result.saddle.remedy === "replace" ? up : nearest; // a file stops at the height of a new piece
  const rest = (one) => (screws ? [taken(one.first_pass), [eighths(one.turns)]]
    : [taken(one.asked.dress_now), taken(one.asked.dress), figure(one.present), figure(one.asked.height, made), figure(one.asked.protrusion, made)]);
  return [partTable("Saddle", ["String", "Verdict", "Too high by", "±", ...more],
    result.saddle.strings.map((one, k) => [`${k + 1} ${noteOf(result, k)}`, [verdicts[one.verdict]], figure(one.lower),
      figure(one.lower_u == null ? null : 2 * one.lower_u), ...rest(one)])), words, sure(screws ? "" : " What is too little for a file to feel stays on.")];
}

const madeOf = new Map(); // what each place shows

// A place is made again only where what it shows is another.
function put(id, parts, ...of) {
  const says = JSON.stringify([units, of]);
  if (madeOf.get(id) === says) return;
  madeOf.set(id, says);
  fill(by(id), parts());
}

export function show(result, glance, sheet) {
  units = sheet.units;
  document.body.classList.toggle("in-inches", units === "in");
  const heldAt = sheet.value("targets.first.held");
  const key = heldAt === "open" ? "first_open" : heldAt === "2" ? "first_held2" : "first_held3";
  const {strings} = result;
  fill(by("findings"), findings(result, sheet.visits - 1));
  put("steps", () => steps(result, glance), result.steps, glance.next?.step, glance.in_short);
  put("readings-table", () => readings(result, key), key, strings, result.stages, result.nut, result.saddle);
  put("visits-table", () => visits(result), strings, result.visits);
  put("clearance", () => clearance(result), strings, result.clearance);
  put("nut-table", () => nut(result), strings, result.nut);
  put("saddle-table", () => saddle(result), strings, result.saddle);
}

// A drawing as the program made it, put into the page as elements. The one style it has is the page's own to give: styles
// within a document are none of this page's.
export function place(id, text, label) {
  if (madeOf.get(id) === text && by(id).firstChild) return;
  madeOf.set(id, text);
  const plain = text.replaceAll(/ style="font-kerning:none"/g, "");
  const drawn = new DOMParser().parseFromString(plain, "image/svg+xml").documentElement;
  if (drawn.nodeName !== "svg") return;
  drawn.setAttribute("role", "img");
  drawn.setAttribute("aria-label", label);
  by(id).replaceChildren(document.importNode(drawn, true),
    make("button", {type: "button", class: "quiet", "aria-label": `${label}: show it large`, onclick: () => enlarge(id)}, "Show it large"));
}

function enlarge(id) {
  by("large-drawing").replaceChildren(by(id).querySelector("svg").cloneNode(true));
  by("large").showModal();
}
