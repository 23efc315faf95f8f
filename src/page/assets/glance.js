// SPDX-License-Identifier: MIT
// At a glance: a tile for each stage, the act to do next, and beside each reading its range. Every word and figure comes
// ready from the program; here it is only put in its place.
import {by, fill, make} from "./dom.js";
import {draw} from "./figure.js";

const marks = {right: "✓", work: "!", wait: "‖", unread: "?"};

// The one word of a verdict that is too long for a tile on a phone.
const hyphenated = (verdict) => verdict.replace("measured", "mea\u00ADsured");

function tile(stage) {
  return make("li", {class: `tile is-${stage.state}`, "data-stage": stage.name},
    make("span", {class: "tile-name"}, stage.name),
    make("b", {class: "tile-verdict"}, make("span", {class: "mark-of", "aria-hidden": "true"}, marks[stage.state]), hyphenated(stage.verdict)),
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

// More strings than this stand in two tables of half as many.
const inOneTable = 7;

// The strings of a table side by side, or one under the other where there is little room: the style shows one of the two.
const across = (rows, strings) => make("table", {class: "strips is-across"},
  make("thead", {}, make("tr", {}, make("th", {scope: "col"}, "String"), strings.map((k) => make("th", {scope: "col"}, String(k + 1))))),
  make("tbody", {}, rows.map((row) => make("tr", {}, make("th", {scope: "row"}, row.label.trim()), strings.map((k) => make("td", {}, row.cells[k]))))));

const down = (rows, strings) => make("table", {class: "strips is-down"},
  make("thead", {}, make("tr", {}, make("th", {scope: "col"}, "String"), rows.map((row) => make("th", {scope: "col"}, row.label.trim())))),
  make("tbody", {}, strings.map((k) => make("tr", {}, make("th", {scope: "row"}, String(k + 1)), rows.map((row) => make("td", {}, row.cells[k]))))));

function strips(rows, count) {
  if (rows.length === 0) return null;
  const shown = Array.from({length: count}, (_, k) => k).filter((k) => rows.some((row) => row.cells[k] !== "-"));
  const half = Math.ceil(shown.length / 2);
  const parts = shown.length > inOneTable ? [shown.slice(0, half), shown.slice(half)] : [shown];
  return make("div", {class: "strips-box"}, parts.map((strings) => across(rows, strings)), down(rows, shown));
}

// What a step reads: the field it wants. The act's own first, else where its stage is read.
const fieldOfAct = {
  "measure-relief": "readings.*.relief.gap", "straightedge": "readings.*.relief.gap", "look-at-frets": "readings.*.frets", "measure-first": "readings.*.first.0",
  "measure-action": "readings.*.action.0", "measure-fret-height": "instrument.crown", "measure-saddle": "readings.*.saddle_height.treble", "find-rod": "instrument.rod",
  "measure-bridge": "readings.*.bridge_top.treble", "look-at-saddle": "saddle.slot_depth", "measure-gaps-again": "readings.*.first.0", "prepare": "readings.*.humidity",
};
const fieldOfStage = {rod: "readings.*.relief.gap", frets: "readings.*.frets", nut: "readings.*.first.0", saddle: "readings.*.action.0",
  tune: "readings.*.cents.0", now: "readings.*.humidity"};
const figureOfStage = {rod: "relief", frets: "crowns", nut: "first", saddle: "height", tune: "cents"};
const reading = /^(measure|look|find|straightedge)/;

// Whether an act only reads, so that anyone may do it.
export const onlyReads = (act) => reading.test(act);

export const fieldOf = (act, stage) => fieldOfAct[act] || fieldOfStage[stage] || "readings.*.humidity";

// Steps that follow without measuring are gone through one after another: how many of them, of which work.
let ahead = 0;
let aheadOf = "";

// The step to be shown, and the one after it that follows at once.
function inHand(next) {
  const steps = [next, ...next.then], of = JSON.stringify(next);
  if (aheadOf !== of) [aheadOf, ahead] = [of, 0];
  return [{strips: [], ...steps[ahead]}, steps[ahead + 1]];
}

// Filled, since one goes on by it, and saying what comes then. Where all is done nothing has to go on.
function wayOn(step, following, field, {done, go}, turn, isDone) {
  if (isDone) return make("button", {type: "button", id: "next-done", onclick: () => done(field)}, "Measure again");
  if (onlyReads(step.act)) return make("button", {type: "button", class: "primary on", id: "next-read", onclick: () => go(field)}, "Enter it");
  return following ? make("button", {type: "button", class: "primary on", id: "next-done", onclick: () => turn(1)}, `Done: step ${following.step}`)
    : make("button", {type: "button", class: "primary on", id: "next-done", onclick: () => done(field)}, "Done: measure again");
}

// done: called with the field to read next; go: called with the field the step is about.
function card(glance, result, calls) {
  if (!glance.next) {
    return make("article", {class: "next is-right", id: "next"}, make("p", {class: "kicker"}, "Next"),
      make("h2", {}, result.done ? "Nothing: every reading is in its range" : "Nothing to do"));
  }
  const [next, following] = inHand(glance.next);
  const stage = result.steps[next.step - 1].stage, field = fieldOf(next.act, stage), figure = figureOfStage[stage];
  const turn = (steps) => {
    ahead += steps;
    put(glance, result, calls);
    by("next").querySelector("h2").focus();
  };
  return make("article", {class: `next${result.done ? " is-right" : ""}`, id: "next", "data-act": next.act},
    figure ? make("figure", {class: "where next-figure"}, draw(figure)) : null,
    make("div", {class: "next-words"},
      make("p", {class: "kicker"}, `Next, step ${next.step} of ${result.steps.length}`), make("h2", {tabindex: "-1"}, next.title),
      next.large.map((row, k) => large(row, k === 0)),
      make("p", {class: "next-do"}, next.do),
      strips(next.strips, result.strings.length),
      next.check ? make("p", {class: "check"}, make("strong", {}, "Check: "), next.check) : null,
      next.care ? make("p", {class: "care-line"}, make("strong", {}, "Care: "), next.care) : null,
      next.before ? make("p", {class: "hint"}, next.before) : null,
      make("div", {class: "choices"},
        wayOn(next, following, field, calls, turn, result.done),
        ahead > 0 ? make("button", {type: "button", id: "next-back", onclick: () => turn(-1)}, `Back to step ${next.step - 1}`) : null,
        make("a", {href: "#plan-title", class: "as-button"}, "The whole plan"))));
}

function put(glance, result, calls) {
  by("next-box").replaceChildren(card(glance, result, calls)); // made anew, with what it does
  const line = glance.next && inHand(glance.next)[0].line;
  by("next-short").hidden = !line;
  by("next-short").textContent = line ? `Next: ${line}` : "";
}

let shown = ""; // what the card says, which is left as it is while that stays the same

export function show(glance, result, calls) {
  fill(by("tiles"), glance.stages.map(tile));
  const says = JSON.stringify([glance.next, glance.in_short, result.steps.length, result.done]);
  if (says === shown && by("next")) return;
  shown = says;
  put(glance, result, calls);
}

const sides = {in: "in range", under: "under", over: "over"};

// A range, and where the reading is: "1.9 to 2.1", "over by 0.10"; or shorter, "1.9–2.1", "0.10 over".
function rangeWords(one, short = false) {
  const side = sides[one.side] || "";
  return [`${one.low}${short ? "–" : " to "}${one.high}${one.marks ? ` (${one.marks})` : ""}`,
    !one.off ? side : short ? `${one.off} ${side}` : `${side} by ${one.off}`];
}

// Beside each reading its range, and as it is typed on which side of it the reading is.
export function showRanges(readings, last) {
  const places = new Map([...by("form").querySelectorAll("[data-range]")].map((place) => [place.dataset.range, place]));
  const putOne = (name, one) => {
    const place = places.get(name);
    if (!place || !one) return;
    const [range, side] = rangeWords(one, true);
    fill(place, make("span", {}, range), side ? make("span", {class: `side ${one.side}`}, side) : null);
  };
  putOne(`readings.${last}.humidity`, readings.humidity);
  putOne(`readings.${last}.relief.gap`, readings.relief);
  for (const key of ["first", "action"]) readings[key].forEach((one, k) => putOne(`readings.${last}.${key}.${k}`, one));
}

// The same for one reading, for who reads one at a time: range and side, as many as there are.
export function rangeOf(readings, path) {
  const [, key, place] = path.match(/^readings\.\d+\.(humidity|relief|first|action)(?:\.(\w+))?$/) || [];
  const all = key && readings[key], one = Array.isArray(all) ? all[Number(place)] : all;
  return one && one.low !== "-" ? rangeWords(one).filter(Boolean) : [];
}
