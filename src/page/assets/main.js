// SPDX-License-Identifier: MIT
// The page: one sheet in hand, asked about again at every keystroke.
import * as answers from "./answers.js";
import {ask, asking} from "./ask.js";
import {by, make, note, steadily, tell} from "./dom.js";
import * as drafts from "./drafts.js";
import {draw} from "./figure.js";
import * as keypad from "./keypad.js";
import * as kept from "./kept.js";
import {kindOf} from "./fields.js";
import * as folder from "./folder.js";
import * as form from "./form.js";
import * as leads from "./leads.js";
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

// What is opened last is what is opened: whoever waits for an answer first takes a number, and is told afterwards whether
// another sheet or screen was wanted meanwhile.
let wanted = 0;

function latest() {
  const mine = ++wanted;
  return () => mine === wanted;
}

// way: "on" a new place to come back from with Back; "at" in place of where one is; "" as the browser has it already.
function show(name, way = "on") {
  latest();
  screen = document.body.dataset.screen = name;
  if (name !== "start") sheet.left = name;
  for (const one of ["start", "taps", "work", "bench"]) by(one).hidden = one !== name;
  by("bar").hidden = name !== "work";
  by("sheet-name").hidden = by("state").hidden = name === "start";
  const place = {screen: name, draft: name === "start" ? null : drafts.key()};
  if (way === "on") history.pushState(place, "");
  if (way === "at") history.replaceState(place, "");
  if (name === "start") note("");
  if (sheet.own.size) keepDraft();
  window.scrollTo(0, 0);
}

// Back and forward: the screen that was there, with the sheet it had.
async function goTo(place) {
  for (const one of document.querySelectorAll("dialog[open]")) one.close();
  if (!place || place.screen === "start") return showStart("");
  const found = place.draft === drafts.key() || await takeDraft(place.draft);
  if (found === null) return;
  if (!found) return showStart("at");
  if (place.screen === "taps") return resumeTaps("");
  if (place.screen === "bench") return beginBench("");
  beginWork("");
}

// The first page's lists, of the drafts and of the folder.
const listAll = asking(async () => {
  kept.list(true);
  await folder.list(asking(openFromFolder));
});

function showStart(way) {
  show("start", way);
  listAll();
}

function offerKinds(place, profiles, begin) {
  by(place).replaceChildren(...profiles.map((profile) =>
    make("button", {type: "button", "data-profile": profile, onclick: () => asking(begin)(profile)}, kindOf(profile))));
}

// --- drafts ------------------------------------------------------------------------------------

function keepDraft() {
  const {own, name, tag, saved, left, tapped: answers} = sheet;
  kept.sayTrouble(sheet, drafts.keep({own: [...own], name, tag, saved, screen, left, tapped: answers}));
  kept.sayState(sheet);
}

// false where there is none; null where something else was wanted meanwhile.
async function takeDraft(key) {
  const still = latest();
  const draft = key && drafts.adopt(key);
  if (!draft) return false;
  const taken = sheet = new Sheet();
  note("");
  sheet.own = new Map(draft.own);
  Object.assign(sheet, {name: draft.name || "", tag: draft.tag || null, saved: draft.saved || "", screen: draft.screen,
    left: draft.left || draft.screen, tapped: draft.tapped || null});
  await asking(learn)(taken); // without its program the page shows at least what was typed
  return still() || null;
}

async function learn(about) {
  const whole = await ask("POST", "/read", bare(about.profile));
  const {body} = await ask("POST", "/read", about.text());
  about.takeUnder(body.entries, whole.body.entries);
  about.applies = body.applies;
}

async function openDraft(key, way = "on") {
  const found = await takeDraft(key);
  if (found) goOn(way);
  else if (found === false) showStart("at");
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
  const still = latest();
  const {status, body} = await ask("POST", "/read", text);
  if (!still()) return;
  if (status !== 200) return tell("That file is no measuring sheet.");
  if (body.entries.length === 0) return tell(`Not opened: ${body.complaints[0]?.text || "it is empty"}`);
  const before = sheet.own.size > 0 && sheet.changed;
  drafts.begin();
  sheet = new Sheet();
  sheet.take(body.entries);
  Object.assign(sheet, {name: name || "", tag: tag || null});
  await learn(sheet);
  if (!still()) return;
  if (sheet.count("readings") === 0) sheet.set("readings.0.date", today());
  sheet.past = [];
  sheet.saved = tag ? sheet.text() : "";
  const ours = text.startsWith("# A measuring sheet: what was read");
  note([before ? "The sheet you had is kept as a draft, on the first page." : "",
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
  taps.askKind(kinds, kindOf, asking(startTaps));
}

async function startTaps(profile) {
  if (!await takeText(bare(profile))) return;
  nameSheet();
  taps.start(sheet, tapCalls);
  show("taps", "at");
}

async function openFromFolder(name) {
  const still = latest();
  const {text, tag, found} = await folder.read(name);
  if (!still()) return;
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
  by("sheet-name").textContent = [sheet.own.get("job.title"), sheet.name || kindOf(sheet.profile)].filter(Boolean).join(" · ");
  document.title = `${sheet.own.get("job.title") || sheet.name || kindOf(sheet.profile) || "sheet"} · sillet`;
}

function beginWork(way = "on") {
  show("work", way);
  rebuild();
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

// Asked first, so that the draft is written while the program works.
function changed() {
  answers.judge();
  nameSheet();
  keepDraft();
  by("undo").disabled = sheet.past.length === 0;
  by("redo").disabled = sheet.future.length === 0;
}

async function prepare(about) {
  await learn(about);
  if (about === sheet) form.build(sheet, changed, rebuild, fields);
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
  whenDone: (words, go) => tapped.end(sheet, words, go, {toSheet: beginWork, takePage: taking.takeOwnersPage}),
  keepIt: (inHand) => { inHand.tapped = taps.kept(); if (inHand === sheet) keepDraft(); },
  judgeIt: asking(async (inHand) => (await ask("POST", "/bench", inHand.text())).body.glance),
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
  by("to-start").addEventListener("click", () => showStart());
  by("leave-taps").addEventListener("click", () => showStart());
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
    else if (screen === "start") steadily(kept.list);
  });
}

// What stays in sight leaves the rest its room, however many lines it takes.
function keepRoom() {
  const heads = [document.querySelector("header"), by("gone"), by("keeping"), by("notice")];
  const measure = () => {
    const root = document.documentElement.style;
    root.setProperty("--head", `${getComputedStyle(document.querySelector("header")).position === "sticky" ? document.querySelector("header").offsetHeight : 0}px`);
    root.setProperty("--top", `${heads.reduce((sum, one) => sum + one.offsetHeight, 0)}px`);
    root.setProperty("--told", `${by("told").offsetHeight}px`);
    root.setProperty("--tiles", `${by("tiles").offsetHeight}px`);
  };
  const observer = new ResizeObserver(measure);
  for (const one of [...heads, by("tiles"), by("told")]) observer.observe(one);
}

async function begin() {
  listen();
  keepRoom();
  drafts.tried();
  kept.sayTrouble(sheet, drafts.trouble());
  answers.begin(() => sheet, () => screen === "work", prepare, {go: goToField, done: measureAgain});
  form.begin(answers.showComplaints);
  leads.begin();
  visits.begin(() => rebuild());
  folder.begin(asking(async () => { if (screen === "work") { await learn(sheet); rebuild(); } }));
  kept.begin(asking(openDraft), () => { drafts.begin(); sheet = new Sheet(); });
  keypad.begin(changed, () => { show("work"); rebuild(); by("tiles").focus({preventScroll: true}); });
  taking.begin(() => sheet);
  saving.begin(() => sheet, () => { nameSheet(); keepDraft(); }, openFromFolder);
  const left = history.state?.screen === "start" ? null : drafts.before();
  const listed = left ? null : listAll(); // asked together with what follows
  [kinds, fields] = (await Promise.all([ask("GET", "/profiles"), ask("GET", "/fields")])).map((one) => one.body);
  offerKinds("profiles", kinds, startNew);
  by("tap-start").addEventListener("click", beginTaps);
  by("tap-figure").append(draw("relief"));
  const found = left ? await takeDraft(left) : false;
  if (found && sheet.screen !== "start") goOn("at");
  else if (found !== null) await showWhole(listed || listAll());
  by("ways").hidden = false;
}

// Where the first page is the first that is shown, its lists come before it: what is to be pressed does not move any more.
async function showWhole(listed) {
  const still = latest();
  await listed;
  if (still()) show("start", "at");
}

begin();
