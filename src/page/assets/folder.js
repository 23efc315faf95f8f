// SPDX-License-Identifier: MIT
// The folder: its sheets with what is next and what each waits for; opening and saving them.
import {ask, asking} from "./ask.js";
import {by, fill, make, steadily, tell} from "./dom.js";

// Where a sheet is kept for good, in a word or two.
export const place = "in the folder";
export const where = "It goes into the folder, as a text file you can read and edit.";

// Files beside the sheets are the folder's own here: the program finds them, and none has to be given to the page.
export const begin = () => {};
export const takes = async () => false;
export const offer = () => null;

let all = [];   // the rows that have come
let count = 0;  // how many sheets there are
let more = "";  // the name after which there are more
let open;
let loading = null; // the next part, while it comes

export async function list(openIt) {
  open = openIt;
  const {status, body} = await ask("GET", "/sheets");
  steadily(() => begun(status, body));
  if (status === 200 && body.sheets.length > 0) await find();
}

// All but the sheets themselves.
function begun(status, body) {
  const place = by("folder-sheets");
  by("take-page").hidden = !body?.file;
  by("folder-find").hidden = status !== 200 || body.sheets.length < 2;
  if (status !== 200 || body.folder === null) {
    place.replaceChildren(make("p", {}, "The folder cannot be read."));
    return;
  }
  sheetsFirst(body.sheets.length > 0);
  by("folder-name").textContent = body.folder === "." ? "the folder sillet was started in" : body.folder;
  if (body.sheets.length === 0) {
    place.replaceChildren(make("p", {class: "hint"}, "No sheets in it yet. The first you save will be here."));
    return;
  }
  [all, count, more] = [body.sheets, body.count, body.more_after];
  by("folder-words").oninput = asking(find);
  by("folder-order").onchange = asking(find);
}

// Who has sheets comes back for one of them more often than for a new one.
function sheetsFirst(any) {
  const before = by(any ? "draft-box" : "tap-box");
  if (before.nextElementSibling !== by("open-box")) before.after(by("open-box"));
  by("to-new").hidden = !any;
}

// One part at a time: whoever wants more meanwhile waits for the same.
const next = () => (loading ??= load().finally(() => { loading = null; }));

async function load() {
  const into = all;
  const {status, body} = await ask("GET", `/sheets?after=${encodeURIComponent(more)}`);
  if (into !== all) return true; // the folder was read anew meanwhile
  if (status !== 200) return tell("The folder cannot be read.");
  all.push(...body.sheets);
  [count, more] = [body.count, body.more_after];
  return true;
}

const wordsOf = (sheet) => [sheet.name, sheet.ref, sheet.title, sheet.owner, sheet.kind, sheet.date, sheet.next, sheet.waits].join(" ").toLowerCase();
const states = ["work", "waits", "wrong", "done"];
const orders = {
  name: () => 0, // as they come
  date: (a, b) => (b.date || "").localeCompare(a.date || ""),
  state: (a, b) => states.indexOf(a.state) - states.indexOf(b.state),
};

const asked = () => ({words: by("folder-words").value.trim().toLowerCase().split(/\s+/).filter(Boolean), order: by("folder-order").value});

// Whoever searches, or wants another order than that of the names, has them all.
async function find() {
  const wanted = () => asked().words.length > 0 || asked().order !== "name";
  while (wanted() && more && await next());
  const {words, order} = asked(); // as they are now: letters were typed meanwhile
  const found = all.filter((sheet) => words.every((word) => wordsOf(sheet).includes(word))).sort(orders[order]);
  steadily(() => show(found, words.length > 0));
}

function show(found, searched) {
  fill(by("folder-sheets"), make("ul", {class: "cards"}, found.map((sheet) => card(sheet, open))),
    more ? make("p", {class: "hint"}, `${all.length} of ${count} sheets, by name. `, make("button", {type: "button", id: "more-sheets", onclick: () => asking(showMore)()}, "Show more"))
      : searched ? make("p", {class: "hint", role: "status"}, found.length ? `${found.length} of ${count} sheets.` : "No sheet has all of these words.") : "");
}

async function showMore() {
  const first = all.length;
  if (!await next()) return;
  await find();
  by("folder-sheets").querySelector("ul").children[first]?.firstElementChild.focus();
}

const card = (sheet, open) => make("li", {},
  make("button", {type: "button", class: `card ${sheet.state}`, "data-sheet": sheet.name, onclick: () => open(sheet.name)},
    make("strong", {}, job(sheet) || sheet.name),
    make("span", {class: "hint"}, [sheet.owner, job(sheet) ? sheet.name : "", sheet.kind].filter(Boolean).join(", "), sheet.date ? [", ", make("span", {class: "day"}, sheet.date)] : ""),
    make("span", {class: "waits"}, make("b", {}, "Next: "), sheet.next),
    sheet.waits === "nothing" ? null : make("span", {class: "waits"}, make("b", {}, "Waits for: "), sheet.waits)));

const job = ({ref, title}) => [ref, title].filter(Boolean).join(" ");

export async function read(name) {
  const {status, tag, reply} = await ask("GET", `/sheets/${encodeURIComponent(name)}`);
  return {text: await reply.text(), tag, found: status === 200};
}

// {saved, tag} or why not: "changed", "exists", or words.
export async function save(sheet, text) {
  const headers = sheet.tag ? {"If-Match": sheet.tag} : {"If-None-Match": "*"};
  const {status, tag, body, reply} = await ask("PUT", `/sheets/${encodeURIComponent(sheet.name)}`, text, headers);
  if (status === 200 || status === 201) return {saved: true, tag};
  if (status === 412) return {why: sheet.tag ? "changed" : "exists", tag};
  return {why: body ? "It has errors, shown beside the fields." : await reply.text()};
}
