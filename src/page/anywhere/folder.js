// SPDX-License-Identifier: MIT
// Where there is no folder: sheets are opened from files, and saved as files.
import {by, download, make} from "./dom.js";
import * as given from "./given.js";

export const begin = given.begin;
export const offer = given.offer;
export const takes = given.takes;

export const place = "as a file";
export const where = "It goes into your downloads, as a text file you can read and edit, and open here again.";

export async function list() {
  by("folder-name").textContent = "this device";
  by("folder-sheets").replaceChildren(make("p", {class: "hint"}, "This page has no folder: a sheet is a file of yours. What you write is kept in this " +
    "browser as a draft, on this device only, until you save it. Where the page was opened from a disk, other pages opened from that disk can read the draft."));
  given.list();
}

export const read = async () => ({text: "", tag: null, found: false});

export async function save(sheet, text) {
  download(sheet.name, new Blob([text], {type: "application/yaml"}));
  return {saved: true, tag: null};
}
