// SPDX-License-Identifier: MIT
// The sheet in hand: texts by path, as the fields have them; and the same as YAML to save and to send.
import {comments} from "./fields.js";

const listIndex = /^\d+$/;

// What a bare number is no length in.
const noLength = new RegExp([
  "^(sillet|units|profile|style|shop\\.(name|contact))$", "^job\\.", "^instrument\\.(frets|join|head_angle|scale\\.square)$",
  "^strings\\.\\d+\\.(note|hz|unit_mass|modulus|course)$",
  "^readings\\.\\d+\\.(date|notes|humidity|temperature|condition|action_at|action_capo|first_held|cents|buzz)",
  "^readings\\.\\d+\\.relief\\.(at|held|string)", "^readings\\.\\d+\\.frets\\.\\d+\\.(string|fret)$",
  "^(styles\\..*\\.)?targets\\.(first\\.held|cents)$", "^saddle\\.intonation$", "^tools\\.cents$",
  "^(styles\\..*\\.)?attacks?\\.(.*\\.)?force", "^limits\\.(humidity|least_break|least_in_slot)",
  "^allowances\\.(fall_share|bury_)", "^materials\\."].join("|"));
const bareNumber = /^[+-]?[\d.,/ ]+$/;

const inList = /\.\d+(\.|$)/;
const eachString = /^(readings\.\d+\.(?:action|first|first_open|cents))\.\d+$/;
const oneEnd = /^(readings\.\d+\.\w+)\.(treble|bass)$/;
const toCome = Symbol("to come"); // the other end of a pair, while one alone is read
const alone = /^\d+([.,]\d+)?$/;

function meant(path, text) {
  if (/^readings\.\d+\.humidity$/.test(path) && alone.test(text)) return `${text} %`;
  if (path === "instrument.head_angle" && alone.test(text)) return `${text} deg`;
  if (/^readings\.\d+\.(relief\.gap|first\.\d+)$/.test(path) && /^(none|ping|wide)$/i.test(text)) return text.toLowerCase();
  return text;
}

const isLength = (path) => !noLength.test(path);

const pause = 1500; // ms, after which a field is taken up again

export class Sheet {
  constructor() {
    this.own = new Map();     // what the sheet says; "": a place left empty
    this.under = new Map();   // what its profile says, units beside it: [text, units]
    this.name = "";           // in the folder
    this.tag = null;          // the version it was read at
    this.saved = "";          // as it was read or saved last
    this.past = [];           // what it said before each change, the last change last
    this.future = [];         // and what was taken back
    this.touched = "";        // the path changed last: what is typed into one field in one go is one change
    this.touchedAt = 0;
    this.applies = null;      // the fields this instrument has, where that is known
    this.chosen = null;       // an earlier visit that is shown
    this.tapped = null;       // the answers to the taps, as far as they were given
    this.left = "";           // the screen on which it was in hand last
  }

  // Before a change: what it said is kept, to be taken back to. Changes made in one go are one.
  mark(path) {
    const goesOn = path === this.touched && Date.now() - this.touchedAt < pause;
    this.touchedAt = Date.now();
    if (this.marking) return;
    this.marking = true;
    queueMicrotask(() => { this.marking = false; });
    if (goesOn) return;
    this.touched = path;
    this.past.push(new Map(this.own));
    if (this.past.length > 300) this.past.shift();
    this.future = [];
  }

  // From the next letter on it is another change, though in the same field.
  rest() { this.touched = ""; }

  step(from, to) {
    if (from.length === 0) return false;
    to.push(this.own);
    this.own = from.pop();
    this.rest();
    return true;
  }

  undo() { return this.step(this.past, this.future); }
  redo() { return this.step(this.future, this.past); }

  get units() { return this.own.get("units") === "in" ? "in" : "mm"; }
  get profile() { return this.own.get("profile") || ""; }

  // What stands at a path: the sheet's own, else the profile's.
  value(path) { return this.own.get(path) || this.typical(path); }

  // The profile's, its unit made plain where the sheet's is another.
  typical(path) {
    const found = this.under.get(path);
    if (!found) return "";
    const [text, units] = found;
    const bare = units !== this.units && isLength(path) && bareNumber.test(text);
    return bare ? `${text} ${units}` : text;
  }

  has(path) { return below(this.own, path).length > 0; }
  hasAny(path) { return this.has(path) || below(this.under, path).length > 0; }

  // How a value is given: "one", "ends" (treble and bass), "band" (low, aim, high), "list" or "".
  shape(path) {
    for (const map of [this.own, this.under]) {
      if (map.get(path)) return "one";
      const keys = below(map, path).map((key) => key.slice(path.length + 1).split(".")[0]);
      if (keys.includes("treble") || keys.includes("bass")) return "ends";
      if (keys.some((key) => ["low", "aim", "high"].includes(key))) return "band";
      if (keys.some((key) => listIndex.test(key))) return "list";
    }
    return "";
  }

  count(path) {
    const places = (map) => below(map, path).map((key) => Number(key.slice(path.length + 1).split(".")[0]));
    const own = places(this.own);
    return Math.max(0, ...(own.length ? own : places(this.under)).map((place) => place + 1));
  }

  get strings() { return this.count("strings"); }
  get visits() { return Math.max(1, this.count("readings")); }

  // The visit whose readings are in the fields: the last, unless another was chosen.
  get last() { return this.chosen !== null && this.chosen < this.visits ? this.chosen : this.visits - 1; }

  // In a list, which replaces the profile's whole, an emptied place is the profile's again.
  set(path, text) {
    this.mark(path);
    this.takeOver(path);
    const told = text.trim();
    this.own.set(path, told === "" && inList.test(path) ? this.typical(path) : told);
  }

  // A list of the sheet replaces the profile's whole: what stays the same is taken over with it.
  takeOver(path) {
    const parts = path.split(".");
    const at = parts.findIndex((part) => listIndex.test(part));
    const list = at > 0 ? parts.slice(0, at).join(".") : "";
    if (!list || this.has(list)) return;
    for (const key of below(this.under, list)) this.own.set(key, this.typical(key));
  }

  remove(path) {
    this.mark(path);
    for (const key of below(this.own, path)) this.own.delete(key);
  }

  // Takes a row out of a list; those behind it move up.
  removeRow(list, row) {
    this.mark(list);
    const rows = below(this.own, list).map((key) => [key, this.own.get(key)]);
    this.remove(list);
    for (const [key, text] of rows) {
      const [place, ...rest] = key.slice(list.length + 1).split(".");
      const now = Number(place) > row ? Number(place) - 1 : Number(place);
      if (Number(place) !== row) this.own.set([list, now, ...rest].join("."), text);
    }
  }

  // From now on bare numbers are in other units; those written so far say which they were in.
  switchUnits(units) {
    this.mark("units");
    for (const [path, text] of this.own) {
      if (text && isLength(path) && bareNumber.test(text)) this.own.set(path, `${text} ${this.units}`);
    }
    this.own.set("units", units);
  }

  take(entries) {
    this.own = new Map();
    this.takeUnder(entries);
    for (const [path, text, units] of entries) {
      // A relief as one figure is its gap; the fields hold what goes with it beside it.
      if (!units) this.own.set(/^readings\.\d+\.relief$/.test(path) ? `${path}.gap` : path, text);
    }
  }

  // whole: the entries of the profile alone, which has the lists that the sheet's own stand in place of.
  takeUnder(entries, whole = []) {
    const theirs = (all) => all.filter((entry) => entry[2]).map(([path, ...rest]) => [path, rest]);
    this.under = new Map([...theirs(whole).filter(([path]) => inList.test(path)), ...theirs(entries)]);
  }

  text() { return write(this.tidy()); }

  // As it is meant: a percentage and an angle need no sign to be known by, a word may begin with a capital, and a list with
  // a place for each string may be filled from any of them. Of two ends one may be read first.
  tidy() {
    const tidied = new Map(), {strings} = this;
    for (const [path, text] of this.own) tidied.set(path, meant(path, text));
    for (const path of this.own.keys()) {
      const list = path.match(eachString)?.[1];
      if (list && strings > 0 && !tidied.has(`${list}.${strings - 1}`)) tidied.set(`${list}.${strings - 1}`, "");
      const [, pair, end] = path.match(oneEnd) || [];
      const other = pair && `${pair}.${end === "treble" ? "bass" : "treble"}`;
      if (pair && this.own.get(path) && !this.own.get(other)) tidied.set(other, toCome);
    }
    return tidied;
  }

  get changed() { return this.text() !== this.saved; }
}

function below(map, path) {
  return [...map.keys()].filter((key) => key === path || key.startsWith(`${path}.`));
}

// --- YAML --------------------------------------------------------------------------------------

const order = ["sillet", "units", "profile", "job", "instrument", "strings", "nut", "saddle", "files", "readings",
               "targets", "model", "attack", "tools", "limits", "allowances", "materials", "plausible"];

// The keys of what is plausible are paths themselves.
function split(path) {
  const parts = path.split(".");
  return parts[0] === "plausible" ? ["plausible", parts.slice(1, -1).join("."), parts.at(-1)] : parts;
}

function tree(own) {
  const root = new Map();
  for (const [path, text] of own) {
    let at = root;
    const parts = split(path);
    for (const part of parts.slice(0, -1)) {
      if (!(at.get(part) instanceof Map)) at.set(part, new Map());
      at = at.get(part);
    }
    if (!(at.get(parts.at(-1)) instanceof Map)) at.set(parts.at(-1), text);
  }
  return root;
}

const isList = (node) => node instanceof Map && node.size > 0 && [...node.keys()].every((key) => listIndex.test(key));
const isEmpty = (node) => node === "" || (node instanceof Map && [...node.values()].every(isEmpty));

function scalar(text) {
  if (text === "" || text === toCome) return "~";
  return /^-?[A-Za-z0-9][A-Za-z0-9 ._%/+-]*$/.test(text) ? text : JSON.stringify(text);
}

function items(list) {
  const length = Math.max(...[...list.keys()].map(Number)) + 1;
  return Array.from({length}, (_, place) => list.get(String(place)) ?? "");
}

// On one line.
function flow(node) {
  if (!(node instanceof Map)) return scalar(node);
  if (isList(node)) return `[${items(node).map((item) => (isEmpty(item) ? "~" : flow(item))).join(", ")}]`;
  const pairs = [...node].filter(([, item]) => !isEmpty(item));
  return `{${pairs.map(([key, item]) => `${key}: ${flow(item)}`).join(", ")}}`;
}

function line(start, path) {
  const why = comments(path);
  return why ? `${start.padEnd(48)} # ${why}` : start;
}

function* mapping(node, path, indent) {
  for (const [key, item] of node) {
    if (!isEmpty(item)) yield line(`${indent}${key}: ${flow(item)}`, `${path}.${key}`);
  }
}

function* rows(list, path) {
  for (const [place, item] of items(list).entries()) {
    const lines = path === "readings" && item instanceof Map ? [...mapping(item, `${path}.${place}`, "    ")] : [];
    if (lines.length === 0) yield `  - ${isEmpty(item) ? "{}" : flow(item)}`;
    else yield* [lines[0].replace("    ", "  - "), ...lines.slice(1)];
  }
}

function* block(key, node) {
  yield "";
  yield line(`${key}:`, key);
  if (isList(node)) yield* rows(node, key);
  else yield* mapping(node, key, "  ");
}

function write(own) {
  const root = tree(own);
  const keys = [...root.keys()].sort((a, b) => rank(a) - rank(b));
  const lines = ["# A measuring sheet: what was read at the bench. sillet plan THIS-FILE tells what to do."];
  for (const key of keys) {
    const node = root.get(key);
    if (isEmpty(node)) continue;
    if (node instanceof Map && key !== "files") lines.push(...block(key, node));
    else lines.push(line(`${key}: ${flow(node)}`, key));
  }
  return `${lines.join("\n")}\n`;
}

function rank(key) {
  const at = order.indexOf(key);
  return at < 0 ? order.length : at;
}
