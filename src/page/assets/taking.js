// SPDX-License-Identifier: MIT
// To take along: what is to be printed, on which paper; the drawings as files; the sheet itself.
import {ask, asking} from "./ask.js";
import {by, download, tell} from "./dom.js";

let hand; // () => the sheet in hand

// What is printed, by the words of `sillet draw`: what is asked for, and what the file's name says of it.
const kinds = {
  all: ["", ""], nut: ["&part=nut", "-nut"], saddle: ["&part=saddle", "-saddle"],
  card: ["&sheet=card", "-card"], owner: ["&sheet=owner", "-owner"],
};

function fileName(ending, what = "") {
  const {name, profile} = hand();
  return `${(name || profile || "sheet").replace(/\.yaml$/, "")}${what}.${ending}`;
}

export async function take(ending, more = "", what = "") {
  const text = hand().text(), file = fileName(ending, what); // another sheet may be in hand when the answer comes
  if (ending === "yaml") return download(file, new Blob([text], {type: "application/yaml"}));
  const {status, reply} = await ask("POST", `/draw?as=${ending}${more}`, text);
  if (status !== 200) return tell(status === 422 ? "The sheet has errors; nothing was drawn." : await reply.text());
  download(file, await reply.blob());
  tell(ending === "pdf" && !more.includes("sheet=") ? "The PDF is in your downloads. Print it at 100 % and measure its rulers." : "It is in your downloads.");
}

export const takeOwnersPage = () => take("pdf", ...kinds.owner);

const chosen = (name) => document.querySelector(`#print-form [name="${name}"]:checked`).value;

async function print(event) {
  event.preventDefault();
  by("printing").close();
  const [more, what] = kinds[chosen("print-what")];
  await take("pdf", `${more}&paper=${chosen("print-paper")}`, what);
}

export function begin(inHand) {
  hand = inHand;
  by("print").addEventListener("click", () => by("printing").showModal());
  by("print-form").addEventListener("submit", asking(print));
  by("print-leave").addEventListener("click", () => by("printing").close());
  for (const button of document.querySelectorAll("[data-file]")) button.addEventListener("click", () => asking(take)(button.dataset.file));
}
