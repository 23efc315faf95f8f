// SPDX-License-Identifier: MIT
// Saving: under a name, into the folder or as a file; and what to do where another version is there already.
import {asking} from "./ask.js";
import {by, tell} from "./dom.js";
import * as folder from "./folder.js";

let hand; // () => the sheet in hand
let done; // called when it is saved
let open; // opens a sheet of the folder by its name

function askName(why) {
  const sheet = hand();
  by("save-why").textContent = why;
  by("save-name").value = sheet.name || `${(sheet.own.get("job.ref") || sheet.own.get("job.title") || sheet.profile || "sheet").replace(/[^\p{L}\p{N} ._-]/gu, "")}.yaml`;
  by("save-over").hidden = by("save-theirs").hidden = true;
  if (!by("save-as").open) by("save-as").showModal();
  by("save-name").select();
}

async function save() {
  const sheet = hand();
  if (!sheet.name) return askName(folder.where);
  const text = sheet.text();
  const {saved, tag, why} = await folder.save(sheet, text).catch(() => ({why: "The program does not answer. What you wrote is kept here as a draft; save it again when the program is back."}));
  if (saved) return finish(sheet, tag, text);
  if (why === "exists" || why === "changed") {
    // A save whose answer never came may have been made: then what is there is this very sheet.
    const there = await folder.read(sheet.name).catch(() => ({found: false}));
    if (there.found && there.text === text) return finish(sheet, there.tag, text);
    return sheet === hand() ? conflict(why) : tell(`${sheet.name} was not saved: it was changed elsewhere. Yours is kept as a draft, on the first page.`);
  }
  if (by("save-as").open) by("save-as").close();
  tell(`Not saved. ${why}`);
}

function finish(sheet, tag, text) {
  Object.assign(sheet, {tag, saved: text});
  if (by("save-as").open) by("save-as").close();
  done();
  tell(`Saved as ${sheet.name}.`);
}

// Another version is there: nothing is written over before someone says so.
function conflict(why) {
  askName(why === "exists" ? "There is a sheet of that name already. Choose another name, or say which to keep."
    : "This sheet was changed elsewhere since it was opened here. Save yours under another name, or say which to keep.");
  by("save-over").hidden = by("save-theirs").hidden = false;
}

async function saveOver() {
  const there = await folder.read(hand().name);
  hand().tag = there.found ? there.tag : null;
  await save();
}

function submitName(event) {
  event.preventDefault();
  const name = by("save-name").value.trim().replace(/(\.yaml)?$/, ".yaml");
  if (name !== hand().name) Object.assign(hand(), {name, tag: null});
  save();
}

export function begin(inHand, whenSaved, openSheet) {
  [hand, done, open] = [inHand, whenSaved, openSheet];
  by("save").addEventListener("click", save);
  by("save-form").addEventListener("submit", submitName);
  by("save-leave").addEventListener("click", () => by("save-as").close());
  by("save-over").addEventListener("click", asking(saveOver));
  // What is in hand is kept as a draft when another sheet is opened.
  by("save-theirs").addEventListener("click", () => { by("save-as").close(); open(hand().name); });
}
