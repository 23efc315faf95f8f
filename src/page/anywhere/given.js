// SPDX-License-Identifier: MIT
// Files that a sheet rests on and that lie beside it on a disk: the shop's own, and an instrument's own. The page has no
// folder, so they are given to it once, by name, and kept in the browser.
import {by, fill, make, tell} from "./dom.js";
import * as drafts from "./drafts.js";

let changed = () => {};

const most = 256 * 1024; // bytes, as of a sheet
const nameOf = (path) => path.split("/").at(-1);

function chooser(id, words) {
  return make("label", {class: "file"}, make("input", {type: "file", class: "unseen", id, accept: ".yaml,.yml",
    onchange: (event) => event.target.files[0] && keep(event.target.files[0])}), words);
}

async function keep(file) {
  const text = file.size <= most ? await file.text().catch(() => null) : null;
  if (text === null) return tell(`${file.name} is over 256 KiB or cannot be read.`);
  if (!/\.yaml$/.test(file.name) || !/^sillet:/m.test(text)) return tell(`${file.name} is not kept: such a file is YAML, ends in .yaml and begins with sillet: 1.`);
  const kept = drafts.keepFile(file.name, text);
  tell(kept ? `${file.name} is kept in this browser.` : `${file.name} is kept only as long as this window is open.`);
  list();
  await changed();
}

function remove(name) {
  const put = drafts.dropFile(name);
  list();
  changed();
  tell(`${name} was removed.`, "Put it back", () => { put(); list(); changed(); });
}

export function list() {
  if (!by("given")) by("file").closest("section").append(make("div", {id: "given"}));
  const names = [...drafts.files().keys()];
  fill(by("given")); // made anew, with what it does
  by("given").append(make("h3", {}, "Files your sheets rest on"),
    make("p", {class: "hint"}, "Your shop's shop.yaml, and an instrument's own file. Each is kept in this browser, on this device only, and read with every sheet that needs it."),
    make("ul", {class: "cards"}, names.map((name) => make("li", {class: "given"}, make("strong", {}, name),
      make("button", {type: "button", class: "quiet", "aria-label": `Remove ${name}`, onclick: () => remove(name)}, "Remove")))),
    chooser("give", "Add such a file"));
}

// Opened like a sheet, the shop's file is known by its name.
export async function takes(file) {
  if (file.name !== "shop.yaml") return false;
  await keep(file);
  return true;
}

// In place of the complaint about a file that is not here: a way to give it.
export function offer({path}, profile) {
  const name = nameOf(profile);
  if (path !== "profile" || !/\.yaml$/.test(name) || drafts.files().has(name)) return null;
  return make("div", {}, `The sheet rests on ${name}, which this page was not given yet.`, make("br"), chooser("give-missing", `Add ${name}`));
}

export const begin = (whenChanged) => { changed = whenChanged; };
