// SPDX-License-Identifier: MIT
// The drafts on the first page: to go on with, to save all together, to remove and to put back.
import {by, download, fill, make, tell} from "./dom.js";
import * as drafts from "./drafts.js";
import {kindOf} from "./fields.js";
import {place} from "./folder.js";
import {Sheet} from "./sheet.js";

let open;    // goes on with the draft of a key
let removed; // called when the one in hand was removed

const titleOf = (draft) => {
  const own = new Map(draft.own);
  const kind = kindOf(own.get("profile") || "sheet");
  return own.get("job.title") || draft.name || `${/^[aeio]/.test(kind) ? "An" : "A"} ${kind}`;
};

// Of two with one name, one window's each, the later in the list says so.
function named(list) {
  const seen = new Map();
  return list.map((draft) => {
    const title = draft.raw === undefined ? titleOf(draft) : "A draft this page cannot read";
    seen.set(title, (seen.get(title) || 0) + 1);
    return [draft, seen.get(title) > 1 ? `${title} (${seen.get(title)})` : title];
  });
}

// What is saved and unchanged needs no draft; neither does a sheet that was begun and nothing was written into or answered.
const begun = /^(sillet|units|profile|readings\.0\.date)$/;
const isWorth = (draft) => draft.raw !== undefined ||
  ((draft.own.some(([path]) => !begun.test(path)) || draft.tapped?.trail?.length > 1) && !(draft.tag && draftText(draft) === draft.saved));

// The drafts to be shown: of two that say the same one is enough. One that says nothing is cleared away only when the first
// page is opened: were it done whenever another window writes, that window would put its own back, and so on without end.
function worthy(clear = false) {
  const seen = new Set();
  return drafts.all().filter((draft) => {
    if (!isWorth(draft)) {
      if (clear && draft.key !== drafts.key()) drafts.drop(draft.key);
      return false;
    }
    const says = draft.raw ?? JSON.stringify([draft.own, draft.name]);
    return !seen.has(says) && seen.add(says);
  });
}

function draftText(draft) {
  const one = new Sheet();
  one.own = new Map(draft.own);
  return one.text();
}

export function list(clear = false) {
  const shown = named(worthy(clear));
  by("draft-box").hidden = shown.length === 0;
  by("drafts-all").hidden = shown.length < 2;
  fill(by("drafts"), shown.map(([draft, title]) => make("li", {}, draft.raw === undefined
    ? make("button", {type: "button", class: "card", "data-draft": draft.key, onclick: () => open(draft.key)},
      make("strong", {}, title), make("span", {class: "hint"}, ...aboutDraft(draft)))
    : make("button", {type: "button", class: "card", "data-draft": draft.key, onclick: () => download("draft.txt", new Blob([draft.raw], {type: "text/plain"}))},
      make("strong", {}, title), make("span", {class: "hint"}, "It may be of a later page. Nothing was changed in it: save it as a file.")),
  make("button", {type: "button", class: "quiet", "aria-label": `Remove ${title}`, onclick: () => removeDraft(draft, title)}, "Remove"))));
}

function aboutDraft(draft) {
  const when = draft.at ? new Date(draft.at).toLocaleString([], {dateStyle: "medium", timeStyle: "short"}) : "";
  const saved = draftText(draft) === draft.saved ? "saved" : "not saved";
  return [[draft.name, saved].filter(Boolean).join(", "), when ? [", ", make("span", {class: "day"}, when)] : ""];
}

function removeDraft(draft, title) {
  const put = drafts.drop(draft.key);
  if (draft.key === drafts.key()) removed();
  list();
  tell(`${title} was removed.`, "Put it back", () => { put(); list(); });
}

function saveAll() {
  const shown = named(worthy().filter((draft) => draft.raw === undefined));
  for (const [draft, title] of shown) {
    download(`${title.replace(/\.yaml$/, "").replace(/[^\p{L}\p{N} ._()-]/gu, "")}.yaml`, new Blob([draftText(draft)], {type: "application/yaml"}));
  }
  tell(`${shown.length} sheets are in your downloads.`);
}

// Said as long as it lasts: what is typed is not kept beyond this window.
export function sayTrouble(sheet, trouble) {
  by("keeping").hidden = !trouble;
  by("keeping-why").textContent = trouble === "full" ? "This browser's storage is full: your sheet is kept only as long as this window is open."
    : "This browser keeps no drafts: your sheet is kept only as long as this window is open.";
  by("keep-file-now").hidden = sheet.own.size === 0;
}

// Saved means in the folder, or as a file.
export function sayState(sheet) {
  const {changed} = sheet; // which writes the whole sheet to see
  const state = !changed ? `Saved ${place}` : drafts.trouble() ? "Not saved" : "Not saved: a draft on this device";
  if (by("state").textContent !== state) by("state").textContent = state;
  by("state").classList.toggle("unsaved", changed);
}

export function begin(openIt, whenRemoved) {
  [open, removed] = [openIt, whenRemoved];
  by("drafts-all").addEventListener("click", saveAll);
}
