// SPDX-License-Identifier: MIT
// The page's figures against those of the printed plan.
import {check, run, same} from "./stage.mjs";

// A table of the printed plan: the words of each row that begins with a string's number, under a heading.
function printed(text, heading) {
  const part = text.slice(text.indexOf(`\n${heading}`) + 1).split("\n\n")[0];
  return part.split("\n").filter((line) => /^ {2,3}\d+ /.test(line)).map((line) => line.trim().split(/\s+/));
}

// Every figure on the cards is the one the plan prints, to the last digit.
export async function figuresAgree(page, yaml, units) {
  const text = run("plan", "--full", "--units", units, yaml).toString();
  const result = JSON.parse(run("plan", "--json", "--units", units, yaml));
  const cards = (place) => page.locator(`#${place} tbody tr`).evaluateAll((rows) => rows.map((row) =>
    [...row.querySelectorAll("td")].map((cell) => cell.textContent.replace("–", "-"))));
  const where = `${yaml}, ${units}`;
  // Of the printed row: its number, verdict, how far off, and ± where the tools leave anything known; the others behind.
  // The page writes 0.00 where the plan has a dash for nothing to take; its verdicts are the result's, string by string.
  const bare = (cells) => cells.map((cell) => /^0\.0+$/.test(cell) ? "-" : cell);
  const row = ([, , off, ...more]) =>
    bare(more[0]?.startsWith("±") ? [off, more[0].slice(1), ...more.slice(1)] : [off, "-", ...more]);
  const words = {leave: "leave", file: "deeper", lower: "lower", raise: "raise", wait: "wait"};
  const verdicts = (part) => result[part].strings.map((one) => words[one.verdict]);
  const figures = (rows) => rows.map((line) => bare(line.slice(1)));
  const nut = await cards("nut-table"), saddle = await cards("saddle-table");
  same(nut.map((line) => line[0]), verdicts("nut"), `verdicts at the nut, ${where}`);
  same(figures(nut).map((line) => line.slice(0, 5)), printed(text, "NUT").map((line) => row(line).slice(0, 5)), `nut, ${where}`);
  // The error of the feelers and the lift, which the plan prints the greatest of: rounded here, both under ten thousandths of an inch.
  // Of an inch halves of a thousandth, or tenths under half of one.
  const inches = (mm) => (Math.abs(mm) < 0.0127 ? Math.round(mm / 0.00254) / 1e4 : Math.round(mm / 0.0127) / 2e3).toFixed(4).replace(/0$/, "");
  const small = (mm) => mm == null ? "-" : units === "in" ? inches(mm) : mm.toFixed(2);
  same(figures(nut).map((line) => line.slice(5)), result.nut.strings.map((one) =>
    bare([small(one.stack_u == null ? null : 2 * one.stack_u), small(one.stack_bend)])), `feelers, ${where}`);
  same(saddle.map((line) => line[0]), verdicts("saddle"), `verdicts at the saddle, ${where}`);
  const wanted = printed(text, "SADDLE").map(row), got = figures(saddle);
  if (wanted[0].length === 8) same(got, wanted.map((line) => [...line.slice(0, 2), ...line.slice(4)]), `saddle in a slot, ${where}`);
  else if (got[0].length === 4) same(got.map((line) => [...line.slice(0, 3), line[3].replace(/^-(?=\d)/, "")]), wanted.map((line) => line.slice(0, 4)), `saddle on screws, ${where}`);
  else same(got.map((line) => line.slice(0, 2)), wanted.map((line) => line.slice(0, 2)), `saddle, ${where}`);
  if (wanted[0].length === 3) same(got.map((line) => line[4]), wanted.map((line) => line[2]), `height done, ${where}`);
  const sand = result.steps.find((step) => step.act === "sand-saddle");
  const caliper = sand ? sand.figures.filter((one) => one.of === "caliper").map((one) => one.shown) : [];
  same(await page.locator("#saddle-table p b").allTextContents(), caliper, `caliper, ${where}`);
  // Readings: behind number, note and gauge "now low to high (aim) after", twice. No note: one word fewer.
  const readings = printed(text, "                    gap at the 1st fret");
  same(await cards("readings-table"), readings.map((line) => line.slice(-12)).map((line) => [line[0], line[5], line[6], line[11]]), `readings, ${where}`);
  const picked = printed(text, "WILL IT BUZZ").map((line) => line.slice(line.length > 5 && !/^[\d.-]+$/.test(line[1]) ? 2 : 1));
  same((await cards("clearance")).map((line) => [line[0], line[1], line[3]]), picked.map((line) => line.slice(0, 3)), `plucks, ${where}`);
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
