// SPDX-License-Identifier: MIT
// The page's figures against those of the printed plan.
import {check, run, same} from "./stage.mjs";

// A table of the printed plan: the words of each row that begins with a string's number, under a heading.
function printed(text, heading) {
  const part = text.slice(text.indexOf(`\n${heading}`) + 1).split("\n\n")[0];
  return part.split("\n").filter((line) => /^ {2,3}\d+ /.test(line)).map((line) => line.trim().split(/\s+/));
}

// The words of a line, and where each ends; words of a head stand one space apart.
const placed = (line, words = /\S+/g) => [...line.matchAll(words)].map((one) => ({word: one[0], from: one.index, to: one.index + one[0].length}));

// A printed table by its heads, which have the right edge of their columns: what stands under each, for every row, and ahead
// of them how far off the string is and the ± of that. A column of nothing but dashes is not printed.
function byHeads(text, heading) {
  const lines = text.slice(text.indexOf(`\n${heading}`) + 1).split("\n\n")[0].split("\n").slice(1);
  const rows = lines.filter((line) => /^ {2,3}\d+ /.test(line));
  const heads = new Map();
  for (const line of lines.slice(lines.findIndex((line) => /^ {2}string/.test(line)), lines.indexOf(rows[0])))
    for (const {word, to} of placed(line, /\S+(?: \S+)*/g)) heads.set(to, [heads.get(to), word].filter(Boolean).join(" "));
  return rows.map((line) => {
    const cells = placed(line), under = Object.fromEntries(cells.map((one) => [heads.get(one.to), one.word]));
    const spread = cells.findIndex((one) => one.word.startsWith("±")), told = [...heads.values()].includes("too high by");
    return {off: told ? cells[spread < 0 ? 2 : spread - 1].word : "-", spread: spread < 0 ? "-" : cells[spread].word.slice(1), under};
  });
}

// The readings as printed: of gap and action what is now, and after. Without a gap or an action, that column is not there.
function readingsPrinted(text) {
  const lines = text.split("\n"), from = lines.findIndex((line) => /^ {2}string +gap at the 1st fret/.test(line));
  if (from < 0) return [];
  const end = lines.findIndex((line, k) => k > from && (line === "" || line.startsWith("  On a rule")));
  const heads = lines[from + 2].match(/\S+/g), rows = lines.slice(from + 3, end).filter((line) => /^ {2,3}\d+ /.test(line));
  const nth = (words, word, count) => words.map((one, k) => [one, k]).filter(([one]) => one === word)[count][1];
  return rows.map((line) => line.match(/\S+/g)).map((words) => [0, 1].flatMap((group) => {
    const range = nth(heads, "range", group), to = nth(words, "to", group);
    return [heads[range - 1] === "now" ? words[to - 2] : "-", heads[range + 2] === "after" ? words[to + 3] : "-"];
  }));
}

// Every figure on the cards is the one the plan prints, to the last digit.
export async function figuresAgree(page, yaml, units) {
  const text = run("plan", "--full", "--units", units, yaml).toString();
  const result = JSON.parse(run("plan", "--json", "--units", units, yaml));
  const cards = (place) => page.locator(`#${place} tbody tr`).evaluateAll((rows) => rows.map((row) =>
    [...row.querySelectorAll("td")].map((cell) => cell.textContent.replace("–", "-"))));
  // By the heads of their columns; one that is not there is of dashes, and none that is there is of nothing else.
  const under = async (place, heads) => {
    const rows = await page.locator(`#${place} tbody tr`).evaluateAll((all) => all.map((row) =>
      Object.fromEntries([...row.querySelectorAll("td")].map((cell) => [cell.dataset.head, cell.textContent.replace("–", "-")]))));
    same([...new Set(rows.flatMap(Object.keys))].filter((head) => !heads.includes(head) || rows.every((row) => row[head] === "-")), [], `columns of ${place}, ${where}`);
    return rows.map((row) => heads.map((head) => row[head] ?? "-"));
  };
  const where = `${yaml}, ${units}`;
  // Where the plan has a dash for nothing to take the page has one, too; its verdicts are the result's, string by string.
  const bare = (cells) => cells.map((cell) => /^0\.0+$/.test(cell) ? "-" : cell);
  const row = (heads) => ({off, spread, under}) => bare([off, spread, ...heads.map((head) => under[head] ?? "-")]);
  // A part of which nothing is known has no rows in the plan, and dashes on the page.
  const known = (rows) => (rows.flat().every((cell) => cell === "-") ? [] : rows);
  const printedAs = (heading, heads) => known(byHeads(text, heading).map(row(heads)));
  const words = {leave: "leave", file: "deeper", lower: "lower", raise: "raise", wait: "wait"};
  const verdicts = (part) => result[part].strings.map((one) => words[one.verdict]);
  const figures = (rows) => rows.map((line) => bare(line.slice(1)));
  const screws = result.saddle.strings.some((one) => one.turns != null), off = ["Verdict", "Too high by", "±"];
  const nut = await under("nut-table", [...off, "First pass", "Feelers now", "Final feelers", "± of the feelers", "Stiffness may lift it by"]);
  const saddle = await under("saddle-table", [...off, ...(screws ? ["First pass", "Screw turns"] : ["Top, first", "Top, in all", "Height now", "Height done", "Out of the bridge"])]);
  same(nut.map((line) => line[0]), verdicts("nut"), `verdicts at the nut, ${where}`);
  same(known(figures(nut).map((line) => line.slice(0, 5))), printedAs("NUT", ["first pass", "feelers to stop now", "feelers to stop final"]), `nut, ${where}`);
  // The error of the feelers and the lift, which the plan prints the greatest of: rounded here, both under ten thousandths of an inch.
  // Of an inch halves of a thousandth, or tenths under half of one.
  const inches = (mm) => (Math.abs(mm) < 0.0127 ? Math.round(mm / 0.00254) / 1e4 : Math.round(mm / 0.0127) / 2e3).toFixed(4).replace(/0$/, "");
  const small = (mm) => mm == null ? "-" : units === "in" ? inches(mm) : mm.toFixed(2);
  same(figures(nut).map((line) => line.slice(5)), result.nut.strings.map((one) =>
    bare([small(one.stack_u == null ? null : 2 * one.stack_u), small(one.stack_bend)])), `feelers, ${where}`);
  same(saddle.map((line) => line[0]), verdicts("saddle"), `verdicts at the saddle, ${where}`);
  const rest = screws ? ["first pass", "screw turns"] : ["top, first", "top, in all", "height now", "height done", "out of bridge"];
  same(known(figures(saddle)), printedAs("SADDLE", rest), `saddle, ${where}`);
  const sand = result.steps.find((step) => step.act === "sand-saddle");
  const caliper = sand ? sand.figures.filter((one) => one.of === "caliper").map((one) => one.shown) : [];
  same(await page.locator("#saddle-table p b").allTextContents(), caliper, `caliper, ${where}`);
  same(known(await cards("readings-table")), known(readingsPrinted(text)), `readings, ${where}`);
  const picked = byHeads(text, "WILL IT BUZZ").map(({under}) => ["picked", "open, now", "open, after"].map((head) => under[head] ?? "-"));
  same((await cards("clearance")).map((line) => [line[0], line[1], line[3]]), picked, `plucks, ${where}`);
  await starsAgree(page, text, result, where);
  if (result.visits.length > 1) await visitsAgree(page, text, result.visits, where);
  same(await page.locator("#steps .do").allTextContents(), result.steps.map((one) => one.do), `steps, ${where}`);
  check((await page.locator("#findings [data-code]").count()) >= result.findings.length, `findings, ${where}`);
}

// A star behind the note of each string whose core is assumed, as in the printed plan, and what the star means.
async function starsAgree(page, text, result, where) {
  const marked = result.strings.filter((one) => one.assumed.includes("core")).map((one) => one.number);
  const starred = (lines) => lines.filter((words) => words[1]?.endsWith("*") || words[0].endsWith("*")).map((words) => parseInt(words[0], 10));
  const heads = await page.locator("#clearance tbody th").allTextContents();
  same(heads.length, result.strings.length, `a row a string, ${where}`);
  same(starred(heads.map((one) => one.split(/\s+/))), marked, `assumed cores on the page, ${where}`);
  same(starred(printed(text, "WILL IT BUZZ")), marked, `assumed cores in the plan, ${where}`);
  const told = (await page.locator("#clearance .hint").allTextContents()).some((one) => one.includes("* Its core was not given"));
  same(told, marked.length > 0, `what the star means, ${where}`);
}

// Lines of eight strings, so that what runs on is joined; the work between two visits by the words before its figures.
async function visitsAgree(page, text, visits, where) {
  const part = text.slice(text.indexOf("\nVISITS SO FAR") + 1).split("\n\n")[0].split("\n").slice(1).join(" ");
  const words = part.replace(/ of that change/g, "").replace(/expected/g, "").split(/\s+/).filter(Boolean);
  const shown = await page.locator("#visits-table tbody tr").evaluateAll((rows) => rows.map((row) => [...row.children].map((cell) => cell.textContent)));
  const told = shown.flat().flatMap((cell) => cell.replace("–", "-").split(/\s+/)).filter(Boolean);
  same(told, words, `visits, ${where}`);
  same(shown.length, 2 * visits.length - 1, `a row a visit and one for the work between, ${where}`);
}
