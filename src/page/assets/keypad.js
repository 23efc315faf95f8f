// SPDX-License-Identifier: MIT
// The bench: one reading at a time under a keypad as large as the screen. What is keyed in goes into the sheet at every key,
// and the next reading comes by itself once a figure has as many places as it is read to.
import {by, make} from "./dom.js";
import {draw} from "./figure.js";
import {rangeOf} from "./glance.js";

let changed; // called when a value has changed
let leave;   // called to see the plan
let sheet;
let list = [];
let place = 0;
let ranges = null;
let moving;

const moveAfter = 700; // ms, time to see what was keyed in

const byEar = ["none", "ping", "wide"];

// What is read, in the order of the bench.
function readings() {
  const at = `readings.${sheet.last}`;
  const each = (key, label, figure, words) => Array.from({length: sheet.strings}, (_, k) =>
    ({path: `${at}.${key}.${k}`, label, which: `String ${k + 1} ${sheet.value(`strings.${k}.note`)}`.trim(), figure, words}));
  const height = !sheet.applies || sheet.applies.includes("readings.saddle_height");
  return [{path: `${at}.humidity`, label: "Humidity of the room", which: "", figure: "room", words: []},
    {path: `${at}.relief.gap`, label: "Relief", which: "The gap in the middle", figure: "relief", words: byEar},
    {path: `${at}.frets`, label: "Frets", which: "Look along each fret under the strings", figure: "crowns", words: ["sound"], only: true},
    ...each("first", "Gap over fret 1", "first", byEar), ...each("action", "Action over fret 12", "action", []),
    ...(height ? [["treble", "String 1"], ["bass", `String ${sheet.strings}`]].map(([key, which]) =>
      ({path: `${at}.saddle_height.${key}`, label: "Saddle height", which, figure: "height", words: []})) : [])];
}

// How many places a figure is read to; it is whole with the last of them.
const places = () => (sheet.units === "in" ? 3 : 2);
const isWhole = (path, text) => !path.endsWith("humidity") && new RegExp(`^\\d*\\.\\d{${places()}}$`).test(text);

function write(text) {
  const {path} = list[place];
  clearTimeout(moving);
  if (path.endsWith(".frets") && sheet.shape(path) === "list") return; // looked at and listed already
  sheet.set(path, text);
  put();
  changed();
  if (isWhole(path, text) || byEar.includes(text) || text === "sound") moving = setTimeout(() => by("bench").hidden || go(1), moveAfter);
}

function key(name) {
  const now = sheet.own.get(list[place].path) || "";
  const bare = /^[\d.]*$/.test(now) ? now : "";
  if (name === "⌫") return write(bare.slice(0, -1));
  if (/^[a-z]+$/.test(name)) return write(name);
  if (name === "." && bare.includes(".")) return null;
  return write((isWhole(list[place].path, bare) ? "" : bare) + name);
}

function go(steps) {
  clearTimeout(moving);
  if (place + steps >= list.length) return leave();
  place = Math.max(0, place + steps);
  sheet.rest();
  return put();
}

const button = (name, label, act, extra = "") => make("button", {type: "button", class: `key ${extra}`, "data-key": name, "aria-label": label, onclick: act}, name);

function pad() {
  const one = list[place];
  const digits = one.only ? [] : ["7", "8", "9", "4", "5", "6", "1", "2", "3", ".", "0", "⌫"];
  return [make("div", {class: "keys"}, digits.map((name) => button(name, name === "⌫" ? "Take the last digit away" : name === "." ? "point" : name, () => key(name)))),
    one.words.length ? make("div", {class: "keys words"}, one.words.map((name) => button(name, name, () => key(name), "word"))) : ""];
}

// What a bare figure is read in; a value that says it itself needs no more.
const unitOf = (path, shown) => (!/^[\d.,]*$/.test(shown) || path.endsWith(".frets") ? "" : path.endsWith(".humidity") ? "%" : sheet.units);

function showValue() {
  const {path} = list[place], shown = sheet.own.get(path) || "";
  by("bench-value").textContent = shown || (list[place].only ? "–" : "");
  by("bench-unit").textContent = unitOf(path, shown);
  const was = sheet.last > 0 ? sheet.own.get(path.replace(/^readings\.\d+/, `readings.${sheet.last - 1}`)) : "";
  by("bench-range").textContent = [...(ranges ? rangeOf(ranges, path) : []), was ? `was ${was}` : ""].filter(Boolean).join(", ");
}

function put() {
  const one = list[place];
  if (by("bench-reading").dataset.path !== one.path) {
    by("bench-reading").dataset.path = one.path;
    by("bench-count").textContent = `${place + 1} of ${list.length}`;
    by("bench-label").textContent = one.label;
    by("bench-which").textContent = one.which;
    by("bench-figure").replaceChildren(draw(one.figure));
    by("bench-pad").replaceChildren(...pad());
    by("bench-back").disabled = place === 0;
  }
  showValue();
}

export function showRange(readingsNow) {
  ranges = readingsNow;
  if (!by("bench").hidden) showValue();
}

// From the first reading that nobody has taken.
export function start(inHand) {
  clearTimeout(moving);
  if (sheet !== inHand) ranges = null;
  sheet = inHand;
  sheet.chosen = null;
  list = readings();
  place = Math.max(0, list.findIndex((one) => !sheet.has(one.path)));
  by("bench-reading").dataset.path = "";
  put();
}

function pressed(event) {
  if (by("bench").hidden || event.ctrlKey || event.metaKey || event.altKey || document.querySelector("dialog[open]")) return;
  const name = {Backspace: "⌫", ",": "."}[event.key] || event.key;
  if (!/^[\d.⌫]$/.test(name) || list[place].only) return;
  event.preventDefault();
  key(name);
}

export function begin(whenChanged, whenDone) {
  [changed, leave] = [whenChanged, whenDone];
  by("bench-back").addEventListener("click", () => go(-1));
  by("bench-next").addEventListener("click", () => go(1));
  by("bench-plan").addEventListener("click", () => leave());
  document.addEventListener("keydown", pressed);
}
