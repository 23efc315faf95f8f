// SPDX-License-Identifier: MIT
// Elements put together in one go; texts are only ever texts.

export function make(name, properties = {}, ...children) {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(properties)) {
    if (key.startsWith("on")) element.addEventListener(key.slice(2), value);
    else if (value === true) element.setAttribute(key, "");
    else if (value !== false && value != null) element.setAttribute(key, value);
  }
  element.append(...children.flat(2).filter((child) => child != null && child !== false));
  return element;
}

// A table with a row for each string: [its head, ...[text, attributes] of each cell]. Where it has no room the style makes a card
// of each row, and sets each cell under the words at the head of its column. The roles are written out because a browser may
// forget them with another layout.
export function rowsOrCards({caption, ...properties}, heads, rows) {
  return make("table", {role: "table", ...properties}, caption ? make("caption", {class: "unseen"}, caption) : null,
    make("thead", {role: "rowgroup"}, make("tr", {role: "row"}, heads.map((head) => make("th", {role: "columnheader", scope: "col"}, head)))),
    make("tbody", {role: "rowgroup"}, rows.map(([head, ...cells]) => make("tr", {role: "row"}, make("th", {role: "rowheader", scope: "row"}, head),
      cells.map(([content, attributes], k) => make("td", {role: "cell", "data-head": heads[k + 1], ...attributes}, content))))));
}

export const by = (id) => document.getElementById(id);

// A place's contents, in one step; what is the same already is left as it is, so that nothing
// flickers and no reader is read it again.
export function fill(place, ...children) {
  const now = place.childNodes, fresh = make("div", {}, ...children).childNodes;
  if (now.length !== fresh.length || [...fresh].some((node, k) => !node.isEqualNode(now[k]))) place.replaceChildren(...fresh);
}

let pointing = false; // whether what was done last was done with the pointer, not by keys

for (const one of ["pointermove", "pointerdown", "keydown"]) document.addEventListener(one, ({type}) => { pointing = type !== "keydown"; }, true);

// Changes the page's contents. A button that a pointer rests on stays under it: the page moves instead.
export function steadily(change) {
  const held = pointing ? document.querySelector("button:hover, a:hover") : null;
  const before = held?.getBoundingClientRect().top;
  const root = document.documentElement;
  if (held) root.style.overflowAnchor = "none"; // or the browser would move the page as well
  change();
  if (held?.isConnected) window.scrollBy({top: held.getBoundingClientRect().top - before, behavior: "instant"});
  if (held) requestAnimationFrame(() => requestAnimationFrame(() => { root.style.overflowAnchor = ""; }));
}

let silence;

// Said once to who cannot see it, and shown for a while to who can; with what can be done about it, if anything.
export function tell(words, label = "", act = null) {
  by("told").replaceChildren(words, act ? make("button", {type: "button", onclick: () => { tell(""); act(); }}, label) : "");
  clearTimeout(silence);
  silence = setTimeout(() => by("told").replaceChildren(), act ? 30000 : 9000);
}

// What matters as long as the sheet is in hand stands in the page's flow until it is closed. "": nothing any more.
export function note(words) {
  by("notice").replaceChildren(...(words ? [make("p", {}, words), make("button", {type: "button", class: "close", "aria-label": "Close this notice", onclick: () => note("")}, "Close")] : []));
}

export function download(name, blob) {
  const link = make("a", {href: URL.createObjectURL(blob), download: name});
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(link.href), 10000);
}
