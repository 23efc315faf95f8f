// SPDX-License-Identifier: MIT
// The program's answers: the sheet in hand is asked about at every change, and its plan, findings and drawings are shown.
import {ask, Unanswered} from "./ask.js";
import {by, fill, make, steadily} from "./dom.js";
import * as folder from "./folder.js";
import * as form from "./form.js";
import * as glance from "./glance.js";
import * as keypad from "./keypad.js";
import * as leads from "./leads.js";
import * as plan from "./plan.js";

let hand, isPlanSeen, prepare, calls; // as begin has them
let busy = false;
let again = false;
let retry;
let planned = null; // the sheet whose plan is shown

// Asks about the sheet in hand; while an answer is waited for, once more when it has come.
export async function judge() {
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
    retry = setTimeout(judge, 2000); // said already; asked again until it answers
  } finally {
    busy = false;
  }
}

// The document says how many answers it has shown the plan of, and of which of them the drawings are.
const count = () => { document.body.dataset.planned = String(Number(document.body.dataset.planned || 0) + 1); };

// Until a sheet has a plan, that of another is not shown either.
const hideOther = (sheet) => document.body.classList.toggle("planless", planned !== sheet);

// An answer is of the sheet that was asked about. Where another is in hand when it comes, nobody is waiting for it.
async function update() {
  const asked = hand();
  hideOther(asked);
  if (asked.under.size === 0) { // begun while the program did not answer
    await prepare(asked);
    if (asked !== hand()) return;
  }
  const text = asked.text();
  const {status, body} = await ask("POST", "/bench", text);
  if (status !== 200 || asked !== hand()) return;
  asked.applies = body.read.applies;
  if (body.result) keypad.showRange(body.glance.readings);
  if (isPlanSeen()) steadily(() => showAnswer(asked, body));
  if (body.result) count();
  if (!body.result || again || !isPlanSeen()) return; // the keypad shows no plan and no drawing
  await new Promise((resolve) => setTimeout(resolve)); // the plan is painted, and what was typed meanwhile comes first
  if (again || asked !== hand()) return;
  const heights = hasHeights(body.result);
  const drawings = await Promise.all(views.map(({view}) => (view === "side" && !heights ? null : drawn(view, text))));
  if (asked !== hand()) return;
  steadily(() => place(drawings, heights));
  document.body.dataset.shown = document.body.dataset.planned;
}

function showAnswer(sheet, {read, result, glance: atAGlance}) {
  showComplaints(read.complaints, !result);
  form.apply(sheet.applies);
  if (result) planned = sheet;
  hideOther(sheet);
  if (!result) return;
  plan.show(result, atAGlance, sheet);
  glance.show(atAGlance, result, calls);
  leads.show(result.findings, sheet.visits - 1);
  glance.showRanges(atAGlance.readings, sheet.visits - 1);
}

export function showComplaints(complaints, stale) {
  const {waiting, homeless} = form.flag(complaints, stale);
  const errors = complaints.filter((one) => one.severity === "error" && !waiting.includes(one));
  const listed = [...new Set([...errors, ...homeless])];
  by("errors").hidden = listed.length === 0;
  by("errors-title").textContent = errors.length ? "The sheet has errors" : "Check these in the sheet";
  by("stale").hidden = !stale;
  fill(by("error-list"), listed.map((one) => make("li", {class: one.severity}, folder.offer(one, hand().profile) || `Line ${one.line}: ${one.text}`)));
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

// inHand: () => the sheet. planSeen: () => whether the plan is on the screen. before: called with a sheet whose fields are not
// known yet, before it is asked about. whatToDo: what the next step's buttons do.
export function begin(inHand, planSeen, before, whatToDo) {
  [hand, isPlanSeen, prepare, calls] = [inHand, planSeen, before, whatToDo];
}
