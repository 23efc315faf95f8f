// SPDX-License-Identifier: MIT
// Drafts: every sheet in hand is kept in the browser at every keystroke. Each window writes one record of its own and no
// other, so that no window can write over another's: there is nothing to compare and nothing to lock. Whoever goes on with
// a draft takes a copy under a name of its own and then removes the old record; a window that still had it in hand writes
// its own again at its next keystroke.

const version = 2;
const prefix = "sillet draft ";
const older = "sillet draft"; // one record for all, of the page before this one
const windowKey = "sillet window";

const fresh = () => prefix + [...crypto.getRandomValues(new Uint8Array(9))].map((byte) => byte.toString(36).padStart(2, "0")).join("");

// Where the browser keeps nothing, or refuses, what it should keep is at least kept as long as this window is open.
const held = new Map();
let refused = "";

function put(key, text) {
  try {
    localStorage.setItem(key, text);
    held.delete(key);
    refused = "";
  } catch (error) {
    held.set(key, text);
    refused = error.name === "QuotaExceededError" ? "full" : "refused";
  }
}

function got(key) {
  if (held.has(key)) return held.get(key);
  try {
    return localStorage.getItem(key);
  } catch {
    refused ||= "refused";
    return null;
  }
}

function gone(key) {
  held.delete(key);
  try {
    localStorage.removeItem(key);
  } catch {
    refused ||= "refused";
  }
}

// The records that are wanted, of all that are kept.
function keys(wanted) {
  const own = [...held.keys()];
  try {
    own.push(...Object.keys(localStorage));
  } catch {
    refused ||= "refused";
  }
  return [...new Set(own)].filter(wanted);
}

function remember(key) {
  try {
    sessionStorage.setItem(windowKey, key);
  } catch { /* a reload then finds it in the list */ }
}

// "" while drafts are kept; else "full" or "refused".
export const trouble = () => refused;

// Whether this browser keeps anything at all, tried before there is anything to lose.
export function tried() {
  put(`${prefix}trial`, "");
  gone(`${prefix}trial`);
}

let mine = fresh();
const ours = new Set(); // records this window has written

export const key = () => mine;

// From now on another record is written to.
export function begin() {
  mine = fresh();
}

export function keep(state) {
  ours.add(mine);
  remember(mine);
  put(mine, JSON.stringify({version, at: Date.now(), ...state}));
  return refused;
}

// A record as it is: {key, at, own, ..}; {key, raw} where this page cannot read it; null where there is none.
function read(at) {
  const raw = got(at);
  if (raw === null) return null;
  try {
    const draft = JSON.parse(raw);
    if ((draft.version ?? 1) > version || !Array.isArray(draft.own) || !draft.own.every((pair) => Array.isArray(pair) && pair.length === 2 && pair.every((one) => typeof one === "string")))
      return {key: at, at: 0, raw};
    return {at: 0, ...draft, key: at};
  } catch {
    return {key: at, at: 0, raw};
  }
}

const isDraft = (key) => key === older || key.startsWith(prefix);

// All, the newest first.
export const all = () => keys(isDraft).map(read).filter(Boolean).sort((a, b) => b.at - a.at);

// Goes on with one: its state, or null where it is gone or cannot be read.
export function adopt(from) {
  const draft = read(from);
  if (!draft || draft.raw !== undefined) return null;
  if (ours.has(from)) mine = from;
  else {
    mine = fresh();
    keep(draft);
    if (!held.has(mine) || held.has(from)) gone(from);
  }
  remember(mine);
  return draft;
}

// Removes one; what it was is given back, to be put again.
export function drop(from) {
  const text = got(from);
  gone(from);
  return () => put(from, text);
}

// --- files that belong to sheets: the shop's, an instrument's own ------------------------------

const filePrefix = "sillet file ";

// Name and text of each, by name.
export function files() {
  const named = keys((key) => key.startsWith(filePrefix)).sort();
  return new Map(named.map((one) => [one.slice(filePrefix.length), got(one)]).filter(([, text]) => text !== null));
}

export function keepFile(name, text) {
  put(filePrefix + name, text);
  return !held.has(filePrefix + name);
}

// Removes one; what it was is given back, to be put again.
export const dropFile = (name) => drop(filePrefix + name);

// What this window had in hand before it was loaded again.
export function before() {
  try {
    return sessionStorage.getItem(windowKey);
  } catch {
    return null;
  }
}
