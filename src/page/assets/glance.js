// SPDX-License-Identifier: MIT
// At a glance: a tile for each stage, the act to do next, and beside each reading its range. Every word and figure comes
// ready from the program; here it is only put in its place.
import {by, fill, make} from "./dom.js";
import {draw} from "./figure.js";

const marks = {right: "✓", work: "!", wait: "…", unread: "?"};

function tile(stage) {
  return make("li", {class: `tile is-${stage.state}`, "data-stage": stage.name},
    make("span", {class: "tile-name"}, stage.name),
    make("b", {class: "tile-verdict"}, make("span", {class: "mark-of", "aria-hidden": "true"}, marks[stage.state]), stage.verdict),
    make("span", {class: "tile-figure"}, stage.short),
    make("span", {class: "tile-figures"}, stage.figures));
}

// Where a figure belongs, in a word.
const whereOf = ({string, end}) => (string != null ? `string ${string}` : end || "");

function large(row, first) {
  return make("div", {class: first ? "large" : "large lesser"}, make("p", {class: "large-label"}, row.label),
    make("p", {class: "large-figures"}, row.figures.map((one) => make("span", {class: "large-figure"},
      make("b", {}, one.shown), " ", make("small", {}, [row.unit, whereOf(one)].filter(Boolean).join(", "))))));
}

function strips(rows, count) {
  if (rows.length === 0) return null;
  const shown = Array.from({length: count}, (_, k) => k).filter((k) => rows.some((row) => row.cells[k] !== "-"));
  return make("div", {class: "scroll", tabindex: "0", role: "region", "aria-label": "Figures of each string"}, make("table", {class: "strips"},
    make("thead", {}, make("tr", {}, make("th", {scope: "col"}, "String"), shown.map((k) => make("th", {scope: "col"}, String(k + 1))))),
    make("tbody", {}, rows.map((row) => make("tr", {}, make("th", {scope: "row"}, row.label.trim()), shown.map((k) => make("td", {}, row.cells[k])))))));
}

// What a step reads: the field it wants. The act's own first, else where its stage is read.
const fieldOfAct = {
  "measure-relief": "readings.*.relief.gap", "straightedge": "readings.*.relief.gap", "look-at-frets": "readings.*.frets", "measure-first": "readings.*.first.0",
  "measure-action": "readings.*.action.0", "measure-fret-height": "instrument.crown", "measure-saddle": "readings.*.saddle_height.treble", "find-rod": "instrument.rod",
  "measure-bridge": "readings.*.bridge_top.treble", "look-at-saddle": "saddle.slot_depth", "measure-gaps-again": "readings.*.first.0", "prepare": "readings.*.humidity",
};
const fieldOfStage = {rod: "readings.*.relief.gap", frets: "readings.*.frets", nut: "readings.*.first.0", saddle: "readings.*.action.0",
  tune: "readings.*.cents.0", now: "readings.*.humidity"};
const figureOfStage = {rod: "relief", frets: "crowns", nut: "first", saddle: "height", tune: "cents", now: "before"};
const reading = /^(measure|look|find|straightedge)/;

// Whether an act only reads, so that anyone may do it.
export const onlyReads = (act) => reading.test(act);

export const fieldOf = (act, stage) => fieldOfAct[act] || fieldOfStage[stage] || "readings.*.humidity";

// done: called with the field to read next; go: called with the field the step is about.
function card(glance, result, {done, go}) {
  const next = glance.next;
  if (!next) {
    return make("article", {class: "next is-right", id: "next"}, make("p", {class: "kicker"}, "Next"),
      make("h2", {}, result.done ? "Nothing: every reading is in its range" : "Nothing to do"));
  }
  const stage = result.steps[next.step - 1].stage, field = fieldOf(next.act, stage);
  const reads = onlyReads(next.act);
  return make("article", {class: `next${result.done ? " is-right" : ""}`, id: "next", "data-act": next.act},
    make("figure", {class: "where next-figure"}, draw(figureOfStage[stage] || "before")),
    make("div", {class: "next-words"},
      make("p", {class: "kicker"}, `Next, step ${next.step} of ${result.steps.length}`), make("h2", {}, next.title),
      next.large.map((row, k) => large(row, k === 0)),
      make("p", {class: "next-do"}, next.do),
      strips(next.strips, result.strings.length),
      next.check ? make("p", {class: "check"}, make("strong", {}, "Check: "), next.check) : null,
      next.care ? make("p", {class: "care-line"}, make("strong", {}, "Care: "), next.care) : null,
      next.before ? make("p", {class: "hint"}, next.before) : null,
      make("div", {class: "choices"},
        reads ? make("button", {type: "button", id: "next-read", onclick: () => go(field)}, "Enter it")
          : make("button", {type: "button", id: "next-done", onclick: () => done(field)}, "Done: measure again"),
        make("a", {href: "#plan-title", class: "as-button"}, "The whole plan"))));
}

export function show(glance, result, calls) {
  fill(by("tiles"), glance.stages.map(tile));
  fill(by("next-box"), card(glance, result, calls));
}

const sides = {in: "in range", under: "under", over: "over"};

// A target range, and where the reading is: "1.9 to 2.1", "over by 0.10"; or shorter, "1.9–2.1", "0.10 over".
function rangeWords(one, short = false) {
  const side = sides[one.side] || "";
  return [`${one.low}${short ? "–" : " to "}${one.high}${one.marks ? ` (${one.marks})` : ""}`,
    !one.off ? side : short ? `${one.off} ${side}` : `${side} by ${one.off}`];
}

// Beside each reading its range, and as it is typed on which side of it the reading is.
export function showRanges(readings, last) {
  const put = (name, one) => {
    const place = document.querySelector(`[data-range="${name}"]`);
    if (!place || !one) return;
    const [range, side] = rangeWords(one, true);
    fill(place, make("span", {}, range), side ? make("span", {class: `side ${one.side}`}, side) : null);
  };
  put(`readings.${last}.relief.gap`, readings.relief);
  for (const key of ["first", "action"]) readings[key].forEach((one, k) => put(`readings.${last}.${key}.${k}`, one));
}

// The same for one reading, for who reads one at a time; "" for a reading without a range.
export function rangeOf(readings, path) {
  const [, key, place] = path.match(/^readings\.\d+\.(relief|first|action)\.(\w+)$/) || [];
  const one = key === "relief" ? readings.relief : key && readings[key][Number(place)];
  return one ? rangeWords(one) : ["", ""];
}
