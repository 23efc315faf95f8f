// SPDX-License-Identifier: MIT
// For who has no gauge yet: the tap tests in the trade's order, one question at a time. What is answered goes into the
// sheet as it would from the fields; what is to be done is the plan's to say.
import {by, make} from "./dom.js";
import {draw} from "./figure.js";

const byEar = [["none", "Silent: no gap at all"], ["ping", "It just clicks or pings"], ["wide", "A clear way to go"]];

const questions = [
  {id: "heard", title: "Do you hear a buzz or a rattle?", figure: "buzz",
   how: "Play each string open and up the neck.", answers: [["yes", "Yes", "hand"], ["no", "No, it is stiff or sharp, or I only want to know", "relief"]]},
  {id: "hand", title: "Does it go when you press close behind the wire?", figure: "buzz",
   how: "Stop the note squarely, the finger close behind the fret, and pluck again, not too hard.",
   answers: [["yes", "Yes, it goes", null], ["no", "No, it buzzes still", "relief"]],
   end: "It was the hand, not the instrument. Stop the note close behind the wire and press squarely."},
  {id: "relief", title: "Relief: is there a gap in the middle of the neck?", figure: "relief",
   how: "Hold an outer string down on fret 1 and where neck and body meet: it is a straightedge now. Tap it over fret 7.",
   answers: byEar.map(([word, shown]) => [word, shown, "crowns"]), set: (sheet, at, word) => sheet.set(`${at}.relief.gap`, word)},
  {id: "crowns", title: "Frets: do you see dents or flats under the strings?", figure: "crowns",
   how: "Look along each crown under the strings, most of all at frets 1 to 3.",
   answers: [["sound", "No, all sound", "slots"], ["dents", "Yes, there are some", "slots"], ["unsure", "I cannot tell", "slots"]],
   set: (sheet, at, word) => { sheet.remove(`${at}.frets`); if (word === "sound") sheet.set(`${at}.frets`, "sound"); }},
  {id: "slots", title: "Nut: is there a gap over the 1st fret?", figure: "first",
   how: "Hold each string behind fret 3 and tap it over fret 1. It should barely click.", strings: true, next: "action",
   set: (sheet, at, word, string) => sheet.set(`${at}.first.${string}`, word)},
  {id: "action", title: "Does it still buzz up the neck, beyond fret 5?", figure: "action",
   how: "With relief and nut as they are, play each string at every fret.",
   answers: [["yes", "Yes", null], ["no", "No", null], ["high", "No, and it is hard to press", null]]},
];

let done;     // called with the words of the end
let trail;    // the questions asked so far
let answers;

function lastWords() {
  if (answers.hand === "yes") return questions[1].end;
  const words = [];
  if (answers.crowns === "dents") words.push("Measure how deep the dents are and write them down, or have the frets looked at: they buzz and make the nut look high.");
  if (answers.action === "yes") words.push("With the rest right, a buzz up the neck means the saddle is too low, or a fret there stands proud.");
  if (answers.action === "high") words.push("With the rest right, stiffness up the neck means the saddle is too high.");
  return words.join(" ");
}

function go(sheet, id) {
  if (id === null) return done(lastWords(), answers.hand !== "yes");
  trail.push(id);
  ask(sheet, questions.find((one) => one.id === id));
}

function back(sheet) {
  trail.pop();
  const id = trail.pop();
  if (id) go(sheet, id);
}

function choices(sheet, question, at) {
  return make("div", {class: "answers"}, question.answers.map(([word, shown, next]) =>
    make("button", {type: "button", class: "answer", "data-answer": word, onclick: () => {
      answers[question.id] = word;
      question.set?.(sheet, at, word);
      go(sheet, next);
    }}, shown)));
}

function everyString(sheet, question, at) {
  const form = make("form", {class: "each-string", onsubmit: (event) => {
    event.preventDefault();
    for (const [name, word] of new FormData(form)) question.set(sheet, at, word, Number(name.split("-")[1]));
    go(sheet, question.next);
  }});
  for (let string = 0; string < sheet.strings; string++) {
    form.append(make("fieldset", {}, make("legend", {}, `String ${string + 1} ${sheet.value(`strings.${string}.note`)}`),
      byEar.map(([word, shown]) => make("label", {class: "pick"},
        make("input", {type: "radio", name: `string-${string}`, value: word, checked: word === "ping"}), shown.split(":")[0]))));
  }
  form.append(make("button", {class: "primary"}, "Go on"));
  return form;
}

function ask(sheet, question) {
  const at = `readings.${sheet.last}`;
  const title = make("h1", {tabindex: "-1"}, question.title);
  by("question").replaceChildren(make("p", {class: "count"}, `Question ${trail.length}`), title, make("p", {class: "lead"}, question.how),
    make("figure", {class: "where"}, draw(question.figure)),
    question.strings ? everyString(sheet, question, at) : choices(sheet, question, at),
    trail.length > 1 ? make("button", {type: "button", class: "quiet", onclick: () => back(sheet)}, "Back") : "");
  title.focus();
}

export function askKind(profiles, nameOf, begin) {
  const title = make("h1", {tabindex: "-1"}, "What kind of instrument is it?");
  by("question").replaceChildren(title, make("div", {class: "answers kinds"}, profiles.map((profile) =>
    make("button", {type: "button", class: "answer", "data-profile": profile, onclick: () => begin(profile)}, nameOf(profile)))));
  title.focus();
}

export function start(sheet, whenDone) {
  [done, trail, answers] = [whenDone, [], {}];
  go(sheet, "heard");
}
