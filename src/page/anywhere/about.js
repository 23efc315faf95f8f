// SPDX-License-Identifier: MIT
// What the page says of itself as a file: that it can be kept, and whose work is in it.
import {by, make} from "./dom.js";
import {files, notices, program} from "./carried.js";

const version = document.querySelector("meta[name=version]").content;

function offer() {
  const draft = `A draft belongs to this address (${location.host}): opened from elsewhere, the page does not find it.`;
  return make("p", {class: "notice", id: "keep-file"}, make("a", {href: location.pathname, download: "sillet.html"}, "Save this file"),
    " to this device, and open it from there: it works without a network. ", draft);
}

async function show(dialog) {
  const all = await notices();
  const text = new TextDecoder();
  dialog.replaceChildren(make("form", {method: "dialog"}, make("button", {class: "primary"}, "Close")), make("h2", {}, "Notices"),
    ...[...all].map(([name, bytes]) => make("details", {}, make("summary", {}, name), make("pre", {tabindex: "0"}, text.decode(bytes)))));
  dialog.showModal();
}

function begin() {
  const dialog = make("dialog", {id: "notices", "aria-label": "Notices"});
  by("start").append(make("p", {class: "hint"}, `sillet ${version}, all in this one file; nothing leaves this device. `,
    make("button", {type: "button", class: "quiet", id: "show-notices", onclick: () => show(dialog)}, "Notices and licences")));
  document.body.append(dialog);
  if (location.protocol !== "file:") by("start").prepend(offer());
}

begin();
Promise.all([program, files]).catch(() => by("start").prepend(make("p", {class: "notice", id: "cannot", role: "alert"},
  "The program in this page cannot be started: this browser is too old for it, or the file did not arrive whole. Open it in a current browser, or fetch it again.")));
