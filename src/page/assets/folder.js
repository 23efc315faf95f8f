// SPDX-License-Identifier: MIT
// The folder: its sheets with what is next and what each waits for; opening and saving them.
import {ask} from "./ask.js";
import {by, make, tell} from "./dom.js";

// Where a sheet is kept for good, in a word or two.
export const place = "in the folder";
export const where = "It goes into the folder, as a text file you can read and edit.";

export async function list(open) {
  const {status, body} = await ask("GET", "/sheets");
  const place = by("folder-sheets");
  by("take-page").hidden = !body?.file;
  if (status !== 200 || body.folder === null) {
    place.replaceChildren(make("p", {}, "The folder cannot be read."));
    return;
  }
  by("folder-name").textContent = body.folder === "." ? "the folder sillet was started in" : body.folder;
  if (body.sheets.length === 0) {
    place.replaceChildren(make("p", {class: "hint"}, "No sheets in it yet. The first you save will be here."));
    return;
  }
  const cards = make("ul", {class: "cards"});
  const rest = make("p", {class: "hint"});
  place.replaceChildren(cards, rest);
  add(body);

  function add({sheets, count, more_after: last}) {
    cards.append(...sheets.map((sheet) => card(sheet, open)));
    if (!last) return rest.remove();
    rest.replaceChildren(`${cards.childElementCount} of ${count} sheets, by name. `,
      make("button", {type: "button", id: "more-sheets", onclick: () => more(last)}, "Show more"));
  }

  async function more(last) {
    const {status, body} = await ask("GET", `/sheets?after=${encodeURIComponent(last)}`);
    const first = cards.childElementCount;
    if (status !== 200) return tell("The folder cannot be read.");
    add(body);
    cards.children[first]?.firstElementChild.focus();
  }
}

const card = (sheet, open) => make("li", {},
  make("button", {type: "button", class: `card ${sheet.state}`, "data-sheet": sheet.name, onclick: () => open(sheet.name)},
    make("strong", {}, job(sheet) || sheet.name),
    make("span", {class: "hint"}, [sheet.owner, job(sheet) ? sheet.name : ""].filter(Boolean).join(", ")),
    make("span", {class: "waits"}, make("b", {}, "Next: "), sheet.next),
    make("span", {class: "waits"}, make("b", {}, "Waits for: "), sheet.waits)));

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
