// SPDX-License-Identifier: MIT
// The page: one sheet in hand, asked about again at every keystroke.
import {ask, asking, Unanswered} from "./ask.js";
import {by, fill, make, tell} from "./dom.js";
import * as drafts from "./drafts.js";
import {draw} from "./figure.js";
import * as glance from "./glance.js";
import * as keypad from "./keypad.js";
import * as kept from "./kept.js";
import * as folder from "./folder.js";
import * as form from "./form.js";
import * as leads from "./leads.js";
import * as plan from "./plan.js";
import * as saving from "./saving.js";
import {Sheet} from "./sheet.js";
import * as taking from "./taking.js";
import * as tapped from "./tapped.js";
import * as taps from "./taps.js";
import * as visits from "./visits.js";

let sheet = new Sheet();
let screen = "start";
let kinds = [];
let fields = []; // all that a sheet may say, as the program has it

// --- which screen ------------------------------------------------------------------------------

// way: "on" a new place to come back from with Back; "at" in place of where one is; "" as the browser has it already.
function show(name, way = "on") {
  screen = name;
  if (name !== "start") sheet.left = name;
  for (const one of ["start", "taps", "work", "bench"]) by(one).hidden = one !== name;
  by("bar").hidden = name !== "work";
  by("sheet-name").hidden = by("state").hidden = name === "start";
  const place = {screen: name, draft: name === "start" ? null : drafts.key()};
  if (way === "on") history.pushState(place, "");
  if (way === "at") history.replaceState(place, "");
  if (name === "start") beginStart();
  if (sheet.own.size) keepDraft();
  window.scrollTo(0, 0);
}

// Back and forward: the screen that was there, with the sheet it had.
async function goTo(place) {
  for (const one of document.querySelectorAll("dialog[open]")) one.close();
  if (!place || place.screen === "start") return show("start", "");
  if (place.draft !== drafts.key() && !await takeDraft(place.draft)) return show("start", "at");
  if (place.screen === "taps") return resumeTaps("");
  if (place.screen === "bench") return beginBench("");
  beginWork("");
}

async function beginStart() {
  kept.list(true);
  await folder.list(asking(openFromFolder));
}

const kind = (profile) => profile.replaceAll("-", " ");

function offerKinds(place, profiles, begin) {
  by(place).replaceChildren(...profiles.map((profile) =>
    make("button", {type: "button", "data-profile": profile, onclick: () => asking(begin)(profile)}, kind(profile))));
}

// --- drafts ------------------------------------------------------------------------------------

function keepDraft() {
  const {own, name, tag, saved, left, tapped: answers} = sheet;
  kept.sayTrouble(sheet, drafts.keep({own: [...own], name, tag, saved, screen, left, tapped: answers}));
  kept.sayState(sheet);
}

async function takeDraft(key) {
  const draft = key && drafts.adopt(key);
  if (!draft) return false;
  sheet = new Sheet();
  sheet.own = new Map(draft.own);
  Object.assign(sheet, {name: draft.name || "", tag: draft.tag || null, saved: draft.saved || "", screen: draft.screen,
    left: draft.left || draft.screen, tapped: draft.tapped || null});
  await asking(learn)(); // without its program the page shows at least what was typed
  return true;
}

async function learn() {
  const whole = await ask("POST", "/read", bare(sheet.profile));
  const {body} = await ask("POST", "/read", sheet.text());
  sheet.takeUnder(body.entries, whole.body.entries);
  sheet.applies = body.applies;
}

async function openDraft(key, way = "on") {
  if (!await takeDraft(key)) return show("start", "at");
  goOn(way);
}

// Where the sheet in hand was left.
function goOn(way) {
  if (sheet.left === "taps") resumeTaps(way);
  else if (sheet.left === "bench") beginBench(way);
  else beginWork(way);
}

function resumeTaps(way) {
  if (sheet.own.size === 0) return askKind(way);
  if (!sheet.tapped) return beginWork(way);
  nameSheet();
  taps.resume(sheet, tapCalls, sheet.tapped);
  show("taps", way);
}

// --- the sheet in hand -------------------------------------------------------------------------

// Another sheet; the one before stays as a draft, in a record that is not written to again.
async function takeText(text, name, tag) {
  const {status, body} = await ask("POST", "/read", text);
  if (status !== 200) return tell("That file is no measuring sheet.");
  if (body.entries.length === 0) return tell(`Not opened: ${body.complaints[0]?.text || "it is empty"}`);
  const before = sheet.own.size > 0 && sheet.changed;
  drafts.begin();
  sheet = new Sheet();
  sheet.take(body.entries);
  Object.assign(sheet, {name: name || "", tag: tag || null});
  await learn();
  if (sheet.count("readings") === 0) sheet.set("readings.0.date", today());
  sheet.past = [];
  sheet.saved = tag ? sheet.text() : "";
  const ours = text.startsWith("# A measuring sheet: what was read");
  tell([before ? "The sheet you had is kept as a draft, on the first page." : "",
    tag && !ours && /(^|\s)#/m.test(text) ? "Remarks written into this file by hand are not kept when it is saved from here." : ""].filter(Boolean).join(" "));
  return true;
}

function today() {
  const now = new Date();
  const two = (number) => String(number).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

const bare = (profile) => `sillet: 1\nunits: mm\nprofile: ${profile}\n`;

async function startNew(profile) {
  if (await takeText(bare(profile))) beginWork();
}

function beginTaps() {
  drafts.begin();
  sheet = new Sheet();
  askKind();
}

function askKind(way = "on") {
  show("taps", way);
  taps.askKind(kinds, kind, asking(startTaps));
}

async function startTaps(profile) {
  if (!await takeText(bare(profile))) return;
  nameSheet();
  taps.start(sheet, tapCalls);
  show("taps", "at");
}

async function openFromFolder(name) {
  const {text, tag, found} = await folder.read(name);
  if (!found) return tell("It is no longer there.");
  if (await takeText(text, name, tag)) beginWork();
}

async function openFile(file) {
  if (file.size > 256 * 1024) return tell("Over 256 KiB: this is no measuring sheet.");
  const text = await file.text().catch(() => null);
  if (text === null) return tell("That file could not be read.");
  if (await folder.takes(file, text)) return;
  if (await takeText(text)) beginWork();
}

function nameSheet() {
  by("sheet-name").textContent = [sheet.own.get("job.title"), sheet.name || kind(sheet.profile)].filter(Boolean).join(" · ");
  document.title = `${sheet.own.get("job.title") || sheet.name || kind(sheet.profile) || "sheet"} · sillet`;
}

function beginWork(way = "on") {
  show("work", way);
  rebuild();
  by("plan").scrollTop = 0;
  by("work").focus({preventScroll: true});
}

// One reading at a time, under a keypad.
function beginBench(way = "on") {
  sheet.rest();
  show("bench", way);
  keypad.start(sheet);
  changed();
}

function rebuild(focus) {
  form.build(sheet, changed, rebuild, fields);
  for (const one of document.querySelectorAll("[name=units]")) one.checked = one.value === sheet.units;
  visits.show(sheet);
  changed();
  if (typeof focus === "string") form.focusOn(focus);
}

function stepBack(done) {
  if (done) rebuild();
  else tell("There is nothing more to take back.");
}

// --- asking again ------------------------------------------------------------------------------

let busy = false;
let again = false;
let retry;
let planned = null; // the sheet whose plan is shown

async function changed() {
  nameSheet();
  keepDraft();
  by("undo").disabled = sheet.past.length === 0;
  by("redo").disabled = sheet.future.length === 0;
  if (busy) { again = true; return; }
  busy = true;
  clearTimeout(retry);
  try {
    do {
      again = false;
      await update();
    } while (again);
  } catch (error) {
    if (!(error instanceof Unanswered)) throw error;
    retry = setTimeout(changed, 2000); // said already; asked again until it answers
  } finally {
    busy = false;
  }
}

async function update() {
  if (sheet.under.size === 0) { // begun while the program did not answer
    await learn();
    form.build(sheet, changed, rebuild, fields);
  }
  const text = sheet.text();
  const {status, body} = await ask("POST", "/bench", text);
  if (status !== 200) return;
  showComplaints(body.read.complaints, !body.result);
  form.apply(sheet.applies = body.read.applies);
  if (body.result) planned = sheet;
  document.body.classList.toggle("planless", planned !== sheet);
  if (!body.result) return;
  plan.show(body.result, body.glance, sheet);
  glance.show(body.glance, body.result, {go: goToField, done: measureAgain});
  leads.show(body.result.findings, sheet.visits - 1);
  glance.showRanges(body.glance.readings, sheet.visits - 1);
  keypad.showRange(body.glance.readings);
  document.body.dataset.planned = String(Number(document.body.dataset.planned || 0) + 1);
  if (again || screen === "bench") return; // the keypad shows no drawing
  const heights = hasHeights(body.result);
  const drawings = await Promise.all(views.map(({view}) => (view === "side" && !heights ? null : drawn(view, text))));
  place(drawings, heights);
  document.body.dataset.shown = String(Number(document.body.dataset.shown || 0) + 1);
}

function showComplaints(complaints, stale) {
  const {waiting, homeless} = form.flag(complaints, stale);
  const errors = complaints.filter((one) => one.severity === "error" && !waiting.includes(one));
  const listed = [...new Set([...errors, ...homeless])];
  by("errors").hidden = listed.length === 0;
  by("errors-title").textContent = errors.length ? "The sheet has errors" : "To be looked at in the sheet";
  by("stale").hidden = !stale;
  fill(by("error-list"), listed.map((one) => make("li", {class: one.severity}, folder.offer(one, sheet.profile) || `Line ${one.line}: ${one.text}`)));
  document.body.classList.toggle("stale", stale);
}

const views = [
  {view: "side", id: "side", label: "The outer strings over the frets from the side, now and after"},
  {view: "nut", id: "nut-drawing", label: "The nut's drawing: floors, centres and feelers"},
  {view: "saddle", id: "saddle-drawing", label: "The saddle's drawing: faces, heights and what comes off"},
];

async function drawn(view, text) {
  const {status, reply} = await ask("POST", `/draw?as=svg&view=${view}`, text);
  return status === 200 ? reply.text() : null;
}

const hasHeights = (result) => result.stages[0].strings.some((one) => one.nut_height != null && one.saddle_height != null);

// Only what is anything yet: a view of heights nobody has read would be an empty sheet.
function place(drawings, heights) {
  by("side-note").textContent = heights ? "Heights magnified; dashed now, solid after." : "Appears as soon as relief, the gap at the 1st fret and the action are read.";
  for (const [k, {view, id, label}] of views.entries()) {
    if (view === "side" && !heights) by(id).replaceChildren();
    else if (drawings[k]) plan.place(id, drawings[k], label);
  }
}

// --- a new visit, the taps' end ----------------------------------------------------------------

function readAgain() {
  sheet.chosen = null;
  sheet.rest();
  sheet.set(`readings.${sheet.count("readings")}.date`, today());
  sheet.rest();
  rebuild(`readings.${sheet.last}.humidity`);
  tell("A new visit, all blank: take every reading again. The older ones are kept.");
}

const here = (path) => path.replace("*", sheet.last);

function goToField(path) {
  if (!form.focusOn(here(path))) form.focusOn(here(path).replace(/\.[^.]+$/, ""));
}

// A step is done: what it changed is measured again, at a new visit.
function measureAgain(path) {
  readAgain();
  goToField(path);
}

const tapCalls = {
  whenDone: (words, go) => tapped.end(sheet, words, go, {toSheet: beginWork, name: taking.fileName("pdf")}),
  keepIt: (inHand) => { inHand.tapped = taps.kept(); if (inHand === sheet) keepDraft(); },
  judgeIt: asking(async (inHand) => (await ask("POST", "/bench", inHand.text())).body.glance?.stages[0]),
};

// --- set going ---------------------------------------------------------------------------------

function undoKeys(event) {
  if (screen !== "work" || !(event.ctrlKey || event.metaKey) || event.altKey || document.querySelector("dialog[open]")) return;
  const key = event.key.toLowerCase();
  if (key !== "z" && key !== "y") return;
  event.preventDefault();
  stepBack(key === "y" || event.shiftKey ? sheet.redo() : sheet.undo());
}

function listen() {
  by("to-start").addEventListener("click", () => show("start"));
  by("leave-taps").addEventListener("click", () => show("start"));
  by("keep-file-now").addEventListener("click", () => taking.take("yaml"));
  by("undo").addEventListener("click", () => stepBack(sheet.undo()));
  by("redo").addEventListener("click", () => stepBack(sheet.redo()));
  by("steps").addEventListener("click", (event) => event.target.dataset.field && goToField(event.target.dataset.field));
  by("findings").addEventListener("click", (event) => event.target.dataset.field && goToField(event.target.dataset.field));
  by("again").addEventListener("click", readAgain);
  by("to-bench").addEventListener("click", () => beginBench());
  by("file").addEventListener("change", (event) => event.target.files[0] && asking(openFile)(event.target.files[0]));
  for (const one of document.querySelectorAll("[name=units]")) {
    one.addEventListener("change", () => { sheet.switchUnits(one.value); rebuild(); });
  }
  document.addEventListener("dragover", (event) => event.preventDefault());
  document.addEventListener("drop", (event) => {
    event.preventDefault();
    if (event.dataTransfer.files[0]) asking(openFile)(event.dataTransfer.files[0]);
  });
  document.addEventListener("keydown", undoKeys);
  window.addEventListener("popstate", (event) => asking(goTo)(event.state));
  window.addEventListener("beforeunload", (event) => { if (drafts.trouble() && sheet.own.size && sheet.changed) event.preventDefault(); });
  window.addEventListener("storage", (event) => {
    // Taken up in another window, perhaps at the very keystroke that this one had just kept: kept again, beside it.
    if (event.key === drafts.key() && event.newValue === null && sheet.own.size) keepDraft();
    else if (screen === "start") kept.list();
  });
}

// What stays in sight at the top leaves the rest its room, however many lines it takes.
function keepRoom() {
  const measure = () => {
    const root = document.documentElement.style;
    root.setProperty("--head", `${getComputedStyle(document.querySelector("header")).position === "sticky" ? document.querySelector("header").offsetHeight : 0}px`);
    root.setProperty("--top", `${document.querySelector("header").offsetHeight}px`);
    root.setProperty("--tiles", `${by("tiles").offsetHeight}px`);
  };
  const observer = new ResizeObserver(measure);
  for (const one of [document.querySelector("header"), by("tiles")]) observer.observe(one);
}

async function begin() {
  listen();
  keepRoom();
  drafts.tried();
  kept.sayTrouble(sheet, drafts.trouble());
  form.begin(showComplaints);
  leads.begin();
  visits.begin(() => rebuild());
  folder.begin(asking(async () => { if (screen === "work") { await learn(); rebuild(); } }));
  kept.begin(asking(openDraft), () => { drafts.begin(); sheet = new Sheet(); });
  keypad.begin(changed, () => { show("work"); rebuild(); by("tiles").focus({preventScroll: true}); });
  taking.begin(() => sheet);
  saving.begin(() => sheet, () => { nameSheet(); keepDraft(); }, openFromFolder);
  [kinds, fields] = (await Promise.all([ask("GET", "/profiles"), ask("GET", "/fields")])).map((one) => one.body);
  offerKinds("profiles", kinds, startNew);
  by("tap-start").addEventListener("click", beginTaps);
  by("tap-figure").append(draw("relief"));
  const left = drafts.before();
  if (!left || history.state?.screen === "start" || !await takeDraft(left) || sheet.screen === "start") return show("start", "at");
  goOn("at");
}

begin();
