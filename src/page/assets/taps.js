// SPDX-License-Identifier: MIT
// For who has no gauge yet: the tap tests in the trade's order, one question at a time. What is answered goes into the
// sheet as it would from the fields; what is to be done is the plan's to say.
import {by, make} from "./dom.js";
import {draw} from "./figure.js";

const byEar = [["none", "Silent: no gap at all"], ["ping", "It just clicks or pings"], ["wide", "A clear way to go"]];

// Gauges that everyone has: what just passes through a gap is as thick as it. A sheet of office paper (80 g/m2) is 0.10 mm
// thick: common practice, no source.
const gauges = [["0.10 mm", "a sheet of paper, 0.10 mm"], ...["0.009", "0.010", "0.011", "0.012", "0.013", "0.016"].map((size) => [`${size} in`, `a plain string of ${size} in`])];

const questions = [
  {id: "heard", title: "Do you hear a buzz or a rattle?", figure: "buzz",
   how: "Play each string open and up the neck.", answers: [["yes", "Yes", "which"], ["no", "No, it is stiff or sharp, or I only want to know", "relief"]]},
  {id: "which", title: "Which note buzzes?", figure: "buzz", note: true, next: () => "hand",
   how: "Find the one that buzzes most: the string, and the fret it is pressed behind; or the open string.",
   answers: [["unknown", "I cannot tell which", "hand"]],
   set: (sheet, at) => sheet.remove(`${at}.buzz`)},
  {id: "hand", title: "Does it go away when you press close behind the fret?", figure: "buzz",
   how: "Press the string close behind the fret, and pluck again, not too hard.",
   answers: [["yes", "Yes, it goes", null], ["no", "No, it buzzes still", "relief"]],
   end: "It was the hand, not the instrument. Press close behind the fret."},
  {id: "relief", title: "Relief: is there a gap in the middle of the neck?", figure: "relief",
   how: "Hold an outer string down on fret 1 and at the body joint: it is a straightedge now. Tap it over fret 7.", gauge: true, next: () => "rod",
   answers: byEar.map(([word, shown]) => [word, shown, "rod"]), set: (sheet, at, word) => sheet.set(`${at}.relief.gap`, word)},
  {id: "rod", title: "Is there a truss rod?", figure: "relief",
   how: "Look for its nut at the headstock, under a cover, or at the neck's end in the sound hole or the pocket. Only look: nothing is turned now.",
   answers: [["two-way", "Yes, one that bends the neck both ways", "rod_state"], ["one-way", "Yes, one that only straightens it; or I do not know which kind", "rod_state"],
     ["none", "No", "crowns"], ["", "I cannot tell", "crowns"]],
   set: (sheet, at, word) => { about(sheet, "rod", word); sheet.remove("instrument.rod_state"); }},
  {id: "rod_state", title: "Does the truss rod nut turn?", figure: "relief",
   how: "If you know how: an eighth of a turn to loosen it, and back. Never force it; leave it where it does not go lightly.",
   answers: [["works", "Yes, and the neck follows", "crowns"], ["slack", "It turns, and nothing happens", "crowns"],
     ["at-end", "It is tight, at the end of its travel", "crowns"], ["stuck", "It does not move", "crowns"],
     ["accepted", "It cannot take the bow out, and the neck stays as it is", "crowns", () => isBowed()], ["", "I have not tried", "crowns"]],
   set: (sheet, at, word) => about(sheet, "rod_state", word)},
  {id: "crowns", title: "Frets: do you see worn spots or flats under the strings?", figure: "crowns",
   how: "Look along each crown under the strings, most of all at frets 1 to 3.",
   answers: [["sound", "No, all sound", "slots"], ["dents", "Yes, there are some", "slots"], ["unsure", "I cannot tell", "slots"]],
   set: (sheet, at, word) => { sheet.remove(`${at}.frets`); if (word === "sound") sheet.set(`${at}.frets`, "sound"); }},
  {id: "slots", title: "Nut: is there a gap over the 1st fret?", figure: "first",
   how: "Press each string behind fret 3 and tap it over fret 1. It should barely click.", strings: true,
   next: () => (rightSoFar() && slotsRight() ? "action" : null),
   set: (sheet, at, word, string) => sheet.set(`${at}.first.${string}`, word)},
  {id: "action", title: "Does it still buzz up the neck, beyond fret 5?", figure: "action",
   how: "With relief, frets and nut in order, play each string at every fret.",
   answers: [["yes", "Yes", null], ["no", "No", null], ["high", "No, and it is hard to press", null]]},
];

function about(sheet, key, word) {
  sheet.remove(`instrument.${key}`);
  if (word) sheet.set(`instrument.${key}`, word);
}

let done;     // called with the words of the end
let keep;     // called with the sheet when something was answered
let judge;    // asks the program how the relief is: all at a glance, or nothing
let trail = []; // the questions asked so far
let answers;

// Only of too much bow can be said that the neck stays as it is.
const isBowed = () => answers.relief === "wide" || answers.gaugedSide === "over";
const isLeft = () => answers.rod_state === "accepted" && ["one-way", "two-way"].includes(answers.rod);
const rightSoFar = () => (answers.relief === "ping" || answers.gauged === "right") && answers.crowns === "sound";
const slotsRight = () => answers.slots.every((word) => word === "ping");

// What each answer means, the relief first: what comes later rests on it.
const verdicts = {
  relief: {
    none: "Relief: silent, so the neck is straight or bowed backward. Lay a straightedge along the frets: it shows which.",
    ping: "Relief: a small gap, as it should be.",
    wide: "Relief: too much bow. The neck comes first, and everything is tapped again when it is right.",
  },
  crowns: {
    dents: "Frets: worn spots buzz, and make the nut look high. Measure how deep they are and write them down, or have the frets looked at.",
    unsure: "Frets: have them looked at before the nut is judged.",
  },
  action: {
    yes: "Saddle: relief, frets and nut are right, so a buzz up the neck means the saddle is too low, or a fret there stands proud.",
    high: "Saddle: relief, frets and nut are right, so stiffness up the neck means the saddle is too high.",
  },
};

function reliefWords() {
  if (answers.relief === "gauge") return answers.gaugedWords + (isLeft() ? " The rod cannot take it out, and the neck stays as it is." : "");
  return isLeft() ? "Relief: too much bow. The rod cannot take it out, and the neck stays as it is: measure how much it is." : verdicts.relief[answers.relief];
}

function slotWords() {
  if (!answers.slots) return null;
  if (isLeft()) return answers.crowns === "sound" ? "Nut and saddle: measure them with the neck as it is." : "Nut and saddle: not judged before the frets are right.";
  if (!rightSoFar()) return "Nut and saddle: not judged before relief and frets are right. Then tap over fret 1 again.";
  const which = (word) => answers.slots.flatMap((one, k) => (one === word ? [k + 1] : [])).join(", ");
  const said = [["none", "too low, or that fret stands proud"], ["wide", "too high"]].filter(([word]) => which(word))
    .map(([word, means]) => `string ${which(word)}: ${means}`);
  return said.length ? `Nut slots, ${said.join("; ")}. The saddle is judged when they are right.` : "Nut: every slot just clicks, as it should.";
}

function lastWords() {
  if (answers.hand === "yes") return [questions.find((one) => one.id === "hand").end];
  return [reliefWords(), verdicts.crowns[answers.crowns], slotWords(), verdicts.action[answers.action]].filter(Boolean);
}

function go(sheet, id) {
  if (id !== null) delete answers[id]; // asked again, after a step back
  trail.push(id);
  keep(sheet);
  put(sheet);
}

// Where the questions have come to: one of them, or the end.
function put(sheet) {
  const id = trail.at(-1);
  if (id === null) return done(lastWords(), answers.hand !== "yes");
  ask(sheet, questions.find((one) => one.id === id));
}

function back(sheet) {
  trail.pop();
  const id = trail.pop();
  if (id) go(sheet, id);
}

function choices(sheet, question, at) {
  return make("div", {class: "answers"}, question.answers.filter(([, , , when]) => !when || when()).map(([word, shown, next]) =>
    make("button", {type: "button", class: "answer", "data-answer": word, onclick: () => {
      answers[question.id] = word;
      question.set?.(sheet, at, word);
      go(sheet, next);
    }}, shown)));
}

// Nothing is chosen beforehand: what nobody tapped is not written down.
function everyString(sheet, question, at) {
  const form = make("form", {class: "each-string", onsubmit: (event) => {
    event.preventDefault();
    const given = new FormData(form);
    answers[question.id] = Array.from({length: sheet.strings}, (_, string) => given.get(`string-${string}`) || "");
    sheet.remove(`${at}.first`);
    if (answers[question.id].some(Boolean)) answers[question.id].forEach((word, string) => question.set(sheet, at, word, string));
    go(sheet, question.next());
  }});
  for (let string = 0; string < sheet.strings; string++) {
    form.append(make("fieldset", {}, make("legend", {}, `String ${string + 1} ${sheet.value(`strings.${string}.note`)}`),
      byEar.map(([word, shown]) => make("label", {class: "pick"},
        make("input", {type: "radio", name: `string-${string}`, value: word}), shown.split(":")[0]))));
  }
  form.append(make("p", {class: "hint"}, "Leave out a string you did not tap."), make("button", {class: "primary"}, "Go on"));
  return form;
}

const option = ([value, shown]) => make("option", {value}, shown);

// The note that buzzes: its string, and its fret or none.
function oneNote(sheet, question, at) {
  const frets = Number(sheet.value("instrument.frets")) || 24;
  const string = make("select", {name: "note-string", required: true, "aria-label": "String"}, [["", "Which string?"],
    ...Array.from({length: sheet.strings}, (_, k) => [String(k + 1), `String ${k + 1} ${sheet.value(`strings.${k}.note`)}`.trim()])].map(option));
  const fret = make("select", {name: "note-fret", required: true, "aria-label": "Fret"}, [["", "Open or fretted?"], ["0", "Open"],
    ...Array.from({length: frets}, (_, k) => [String(k + 1), `Fretted at ${k + 1}`])].map(option));
  return make("form", {class: "with-gauge", onsubmit: (event) => {
    event.preventDefault();
    answers[question.id] = "told";
    sheet.remove(`${at}.buzz`);
    sheet.set(`${at}.buzz.0.string`, string.value);
    sheet.set(`${at}.buzz.0.fret`, fret.value);
    go(sheet, question.next());
  }}, string, fret, make("button", {class: "primary"}, "Go on"));
}

// Measured with what is at hand: a reading like any other, which the program judges.
function withGauge(sheet, question, at) {
  const passes = make("select", {name: "gauge", required: true, "aria-label": "The thickest that just passes"}, [["", "The thickest that just passes"], ...gauges].map(option));
  return make("form", {class: "with-gauge", onsubmit: async (event) => {
    event.preventDefault();
    answers.relief = "gauge";
    sheet.set(`${at}.relief.gap`, passes.value);
    const asked = answers;
    const glance = await judge(sheet), relief = glance?.stages[0];
    if (answers !== asked || trail.at(-1) !== question.id) return; // left meanwhile
    answers.gauged = relief?.state || "";
    answers.gaugedSide = glance?.readings.relief?.side || "";
    answers.gaugedWords = relief ? `Relief: ${relief.verdict}, ${relief.figures}.` : "Relief: measured.";
    go(sheet, question.next());
  }}, make("p", {}, "Or measure it with what you have:"), passes, make("button", {}, "Go on with that"));
}

function ask(sheet, question) {
  const at = `readings.${sheet.last}`;
  const title = make("h1", {tabindex: "-1"}, question.title);
  by("question").replaceChildren(make("p", {class: "count"}, `Question ${trail.length}`), title,
    answers.relief && question.id.startsWith("rod") ? make("p", {class: "verdict"}, reliefWords()) : "",
    make("p", {class: "lead"}, question.how), make("figure", {class: "where"}, draw(question.figure)),
    question.note ? oneNote(sheet, question, at) : "",
    question.strings ? everyString(sheet, question, at) : choices(sheet, question, at),
    question.gauge ? withGauge(sheet, question, at) : "",
    trail.length > 1 ? make("button", {type: "button", class: "quiet", onclick: () => back(sheet)}, "Back") : "");
  title.focus();
}

export function askKind(profiles, nameOf, begin) {
  const title = make("h1", {tabindex: "-1"}, "What kind of instrument is it?");
  by("question").replaceChildren(title, make("div", {class: "answers kinds"}, profiles.map((profile) =>
    make("button", {type: "button", class: "answer", "data-profile": profile, onclick: () => begin(profile)}, nameOf(profile)))));
  title.focus();
}

export function start(sheet, {whenDone, keepIt, judgeIt}) {
  [done, keep, judge, trail, answers] = [whenDone, keepIt, judgeIt, [], {}];
  go(sheet, "heard");
}

// What was answered so far, to go on from.
export const kept = () => (trail.length ? {trail: [...trail], answers: {...answers}} : null);

export function resume(sheet, {whenDone, keepIt, judgeIt}, tapped) {
  [done, keep, judge, trail, answers] = [whenDone, keepIt, judgeIt, [...tapped.trail], {...tapped.answers}];
  put(sheet);
}
