// SPDX-License-Identifier: MIT
// The page: one sheet in hand, asked about again at every keystroke.
import {ask} from "./ask.js";
import {by, download, fill, make, tell} from "./dom.js";
import * as folder from "./folder.js";
import * as form from "./form.js";
import * as plan from "./plan.js";
import {unanswered} from "./send.js";
import {Sheet} from "./sheet.js";
import * as taps from "./taps.js";

const draftKey = "sillet draft";
let sheet = new Sheet();
let screen = "start";

// --- which screen ------------------------------------------------------------------------------

function show(name) {
  screen = name;
  for (const one of ["start", "taps", "work"]) by(one).hidden = one !== name;
  by("bar").hidden = name !== "work";
  by("sheet-name").hidden = name === "start";
  if (name === "start") beginStart();
  rememberScreen();
  window.scrollTo(0, 0);
}

// A reload comes back to where it was left.
function rememberScreen() {
  const kept = localStorage.getItem(draftKey);
  if (kept) localStorage.setItem(draftKey, JSON.stringify({...JSON.parse(kept), screen}));
}

async function beginStart() {
  const kept = localStorage.getItem(draftKey);
  by("draft-box").hidden = !kept;
  if (kept) by("draft-about").textContent = aboutDraft(JSON.parse(kept));
  await folder.list(openFromFolder);
}

function aboutDraft(draft) {
  const own = new Map(draft.own);
  return own.get("job.title") || draft.name || `A sheet of a ${kind(own.get("profile") || "instrument")}, not saved yet.`;
}

const kind = (profile) => profile.replaceAll("-", " ");

function offerKinds(place, profiles, begin) {
  by(place).replaceChildren(...profiles.map((profile) =>
    make("button", {type: "button", "data-profile": profile, onclick: () => begin(profile)}, kind(profile))));
}

// --- the sheet in hand -------------------------------------------------------------------------

async function takeText(text, name, tag) {
  const {status, body} = await ask("POST", "/read", text);
  if (status !== 200) return tell("That file is no measuring sheet.");
  if (body.entries.length === 0) return tell(`Not opened: ${body.complaints[0]?.text || "it is empty"}`);
  sheet = new Sheet();
  sheet.take(body.entries);
  Object.assign(sheet, {name: name || "", tag: tag || null});
  if (sheet.count("readings") === 0) sheet.set("readings.0.date", today());
  sheet.saved = tag ? sheet.text() : "";
  const ours = text.startsWith("# A measuring sheet: what was read");
  tell(tag && !ours && /(^|\s)#/m.test(text) ? "Opened. Remarks written into this file by hand are not kept when it is saved from here." : "");
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

async function startTaps(profile) {
  if (!await takeText(bare(profile))) return;
  nameSheet();
  taps.start(sheet, endTaps);
}

async function openFromFolder(name) {
  const {text, tag, found} = await folder.read(name);
  if (!found) return tell("It is no longer there.");
  if (await takeText(text, name, tag)) beginWork();
}

async function openFile(file) {
  if (file.size > 256 * 1024) return tell("Over 256 KiB: this is no measuring sheet.");
  if (await takeText(await file.text())) beginWork();
}

function nameSheet() {
  by("sheet-name").textContent = [sheet.own.get("job.title"), sheet.name || kind(sheet.profile)].filter(Boolean).join(" · ");
  document.title = `${sheet.own.get("job.title") || sheet.name || kind(sheet.profile) || "sheet"} · sillet`;
}

function keepDraft() {
  localStorage.setItem(draftKey, JSON.stringify({own: [...sheet.own], name: sheet.name, tag: sheet.tag, saved: sheet.saved, screen}));
}

function beginWork(focus) {
  show("work");
  rebuild();
  if (!focus) by("work").focus();
}

function rebuild(focus) {
  form.build(sheet, changed, rebuild);
  for (const one of document.querySelectorAll("[name=units]")) one.checked = one.value === sheet.units;
  const visits = sheet.count("readings");
  by("visits").textContent = visits > 1 ? `Visit ${visits}. Earlier ones are kept in the sheet; this one counts and stands alone.` : "";
  changed();
  if (typeof focus === "string") form.focusOn(focus);
}

// Whatever was in the draft is put back, on a reload, where it was.
async function restore() {
  const kept = localStorage.getItem(draftKey);
  const draft = kept && JSON.parse(kept);
  if (!draft) return false;
  sheet = new Sheet();
  sheet.own = new Map(draft.own);
  Object.assign(sheet, {name: draft.name, tag: draft.tag, saved: draft.saved});
  const {body} = await ask("POST", "/read", sheet.text());
  sheet.takeUnder(body.entries);
  beginWork();
  return true;
}

// --- asking again ------------------------------------------------------------------------------

let busy = false;
let again = false;

async function changed() {
  nameSheet();
  keepDraft();
  if (busy) { again = true; return; }
  busy = true;
  try {
    do {
      again = false;
      await update();
    } while (again);
  } catch {
    tell(unanswered);
  } finally {
    busy = false;
  }
}

async function update() {
  const text = sheet.text();
  const drawings = Promise.all(views.map(({view}) => drawn(view, text)));
  drawings.catch(() => {}); // told already, and thrown where it is waited for
  const [read, made] = await Promise.all([ask("POST", "/read", text), ask("POST", "/plan", text)]);
  if (read.status === 200) showComplaints(read.body.complaints, made.status !== 200);
  if (made.status !== 200) return;
  plan.show(made.body, sheet);
  place(await drawings, made.body);
  document.body.dataset.shown = String(Number(document.body.dataset.shown || 0) + 1);
}

function showComplaints(complaints, stale) {
  const homeless = form.flag(complaints);
  const errors = complaints.filter((one) => one.severity === "error");
  const listed = [...new Set([...errors, ...homeless])];
  by("errors").hidden = listed.length === 0;
  by("errors-title").textContent = errors.length ? "The sheet has errors" : "To be looked at in the sheet";
  by("stale").hidden = !stale;
  fill(by("error-list"), listed.map((one) => make("li", {class: one.severity}, `Line ${one.line}: ${one.text}`)));
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

// Only what is anything yet: a view of heights nobody has read would be an empty sheet.
function place(drawings, result) {
  const heights = result.stages[0].strings.some((one) => one.nut_height != null && one.saddle_height != null);
  by("side-note").textContent = heights ? "Heights magnified; dashed now, solid after." : "Appears as soon as relief, the gap at the 1st fret and the action are read.";
  for (const [k, {view, id, label}] of views.entries()) {
    if (view === "side" && !heights) by(id).replaceChildren();
    else if (drawings[k]) plan.place(id, drawings[k], label);
  }
}

// --- to take along -----------------------------------------------------------------------------

const fileName = (ending) => `${(sheet.name || sheet.profile || "sheet").replace(/\.yaml$/, "")}.${ending}`;

async function take(ending) {
  if (ending === "yaml") return download(fileName(ending), new Blob([sheet.text()], {type: "application/yaml"}));
  const {status, reply} = await ask("POST", `/draw?as=${ending}`, sheet.text());
  if (status !== 200) return tell(status === 422 ? "The sheet has errors; nothing was drawn." : await reply.text());
  download(fileName(ending), await reply.blob());
  tell(ending === "pdf" ? "The pack is in your downloads. Print it at 100 % and measure its rulers." : "It is in your downloads.");
}

// --- saving ------------------------------------------------------------------------------------

function askName(why) {
  by("save-why").textContent = why;
  by("save-name").value = sheet.name || `${(sheet.own.get("job.ref") || sheet.own.get("job.title") || sheet.profile || "sheet").replace(/[^\p{L}\p{N} ._-]/gu, "")}.yaml`;
  by("save-over").hidden = by("save-theirs").hidden = true;
  if (!by("save-as").open) by("save-as").showModal();
  by("save-name").select();
}

async function save() {
  if (!sheet.name) return askName(folder.where);
  const {saved, tag, why} = await folder.save(sheet);
  if (saved) {
    Object.assign(sheet, {tag, saved: sheet.text()});
    if (by("save-as").open) by("save-as").close();
    nameSheet();
    keepDraft();
    return tell(`Saved as ${sheet.name}.`);
  }
  if (why === "exists" || why === "changed") return conflict(why);
  tell(`Not saved. ${why}`);
}

// Another version is there: nothing is written over before someone says so.
function conflict(why) {
  askName(why === "exists" ? "There is a sheet of that name already. Choose another name, or say what is to be kept."
    : "This sheet was changed by another hand since it was opened here. Save yours under another name, or say what is to be kept.");
  by("save-over").hidden = by("save-theirs").hidden = false;
}

async function saveOver() {
  const there = await folder.read(sheet.name);
  sheet.tag = there.found ? there.tag : null;
  await save();
}

function submitName(event) {
  event.preventDefault();
  const name = by("save-name").value.trim().replace(/(\.yaml)?$/, ".yaml");
  if (name !== sheet.name) Object.assign(sheet, {name, tag: null});
  save();
}

// --- a new visit, the taps' end ----------------------------------------------------------------

function readAgain() {
  sheet.set(`readings.${sheet.count("readings")}.date`, today());
  rebuild(`readings.${sheet.last}.humidity`);
  tell("A new visit, all blank: take every reading again. The older ones are kept.");
}

function endTaps(words, go) {
  const title = make("h1", {tabindex: "-1"}, "What the taps tell");
  const steps = make("div", {id: "tap-steps"});
  by("question").replaceChildren(title, make("ul", {class: "verdicts"}, words.map((one) => make("li", {}, one))),
    go ? make("h2", {}, "To do and to measure") : "", steps,
    make("button", {type: "button", class: "primary", id: "tap-go", onclick: () => beginWork()}, go ? "To the sheet" : "To the sheet all the same"));
  title.focus();
  if (go) ask("POST", "/plan", sheet.text()).then(({body}) => {
    const measure = (body?.steps || []).slice(1, -1);
    steps.replaceChildren(make("ol", {class: "steps"}, measure.map((one) => make("li", {}, make("p", {class: "do"}, one.do)))));
  });
}

// --- set going ---------------------------------------------------------------------------------

function listen() {
  by("to-start").addEventListener("click", () => show("start"));
  by("leave-taps").addEventListener("click", () => show("start"));
  by("draft").addEventListener("click", restore);
  by("save").addEventListener("click", save);
  by("print").addEventListener("click", () => take("pdf"));
  by("again").addEventListener("click", readAgain);
  by("save-form").addEventListener("submit", submitName);
  by("save-leave").addEventListener("click", () => by("save-as").close());
  by("save-over").addEventListener("click", saveOver);
  by("save-theirs").addEventListener("click", () => { by("save-as").close(); openFromFolder(sheet.name); });
  by("file").addEventListener("change", (event) => event.target.files[0] && openFile(event.target.files[0]));
  for (const button of document.querySelectorAll("[data-file]")) button.addEventListener("click", () => take(button.dataset.file));
  for (const one of document.querySelectorAll("[name=units]")) {
    one.addEventListener("change", () => { sheet.switchUnits(one.value); rebuild(); });
  }
  document.addEventListener("dragover", (event) => event.preventDefault());
  document.addEventListener("drop", (event) => {
    event.preventDefault();
    if (event.dataTransfer.files[0]) openFile(event.dataTransfer.files[0]);
  });
}

async function begin() {
  listen();
  form.begin();
  const {body: profiles} = await ask("GET", "/profiles");
  offerKinds("profiles", profiles, startNew);
  by("tap-start").addEventListener("click", () => { show("taps"); taps.askKind(profiles, kind, startTaps); });
  const draft = JSON.parse(localStorage.getItem(draftKey) || "null");
  if (draft?.screen !== "work" || !await restore()) show("start");
}

begin();
