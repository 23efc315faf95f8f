// SPDX-License-Identifier: MIT
// Where the taps end: what was found, what anyone can do, then what takes tools and practice, and a page to take along to
// who has them.
import {ask, asking} from "./ask.js";
import {by, make} from "./dom.js";
import {onlyReads} from "./glance.js";

const listOf = (title, steps) => (steps.length === 0 ? [] : [make("h3", {}, title),
  make("ol", {class: "steps"}, steps.map((one) => make("li", {}, make("p", {class: "do"}, one.do))))]);

async function showSteps(sheet, place) {
  const {body} = await ask("POST", "/plan", sheet.text());
  const rest = (body?.steps || []).slice(1, -1);
  place.replaceChildren(make("h2", {}, "To do and to measure"), ...listOf("You can do this yourself", rest.filter((one) => onlyReads(one.act))),
    ...listOf("This takes tools and practice: a repairer can do it", rest.filter((one) => !onlyReads(one.act))));
}

// go: whether there is anything to do to the instrument.
export function end(sheet, words, go, {toSheet, takePage}) {
  const title = make("h1", {tabindex: "-1"}, "What the taps show");
  const steps = make("div", {id: "tap-steps"});
  by("question").replaceChildren(title, make("ul", {class: "verdicts"}, words.map((one) => make("li", {}, one))), steps,
    make("div", {class: "choices"},
      make("button", {type: "button", class: "primary", id: "tap-go", onclick: () => toSheet()}, go ? "To the sheet" : "To the sheet all the same"),
      go ? make("button", {type: "button", id: "tap-page", onclick: () => asking(takePage)()}, "A page for a repairer, PDF") : ""));
  title.focus();
  if (go) asking(showSteps)(sheet, steps);
}
