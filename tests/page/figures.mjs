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
  const text = run("plan", "--units", units, yaml).toString();
  const result = JSON.parse(run("plan", "--json", yaml));
  const cards = (place) => page.locator(`#${place} tbody tr`).evaluateAll((rows) => rows.map((row) =>
    [...row.querySelectorAll("td")].map((cell) => cell.textContent.replace("–", "-"))));
  const where = `${yaml}, ${units}`;
  // Of the printed row: its number, verdict, how far off, and ± where the tools leave anything known; the others behind.
  const row = ([, verdict, off, ...more]) =>
    (more[0]?.startsWith("±") ? [verdict, off, more[0].slice(1), ...more.slice(1)] : [verdict, off, "-", ...more]);
  same(await cards("nut-table"), printed(text, "NUT").map((line) => row(line).slice(0, 5)), `nut, ${where}`);
  const saddle = printed(text, "SADDLE").map(row);
  const got = await cards("saddle-table");
  if (saddle[0].length === 9) same(got, saddle.map((line) => [...line.slice(0, 3), ...line.slice(5)]), `saddle in a slot, ${where}`);
  else if (got[0].length === 5) same(got, saddle, `saddle on screws, ${where}`);
  else same(got.map((line) => line.slice(0, 3)), saddle.map((line) => line.slice(0, 3)), `saddle, ${where}`);
  if (saddle[0].length === 4) same(got.map((line) => line[5]), saddle.map((line) => line[3]), `height done, ${where}`);
  const caliper = text.replace(/\s+/g, " ").match(/until the caliper reads ([\d.]+) \w+ at string 1 and ([\d.]+)/);
  const onCard = await page.locator("#saddle-table p b").allTextContents();
  same(onCard, caliper ? caliper.slice(1) : [], `caliper, ${where}`);
  // Readings: behind number, note and gauge "now low to high (aim) after", twice. No note: one word fewer.
  const readings = printed(text, "                    gap at the 1st fret");
  same(await cards("readings-table"), readings.map((line) => line.slice(-12)).map((line) => [line[0], line[5], line[6], line[11]]), `readings, ${where}`);
  const picked = printed(text, "WILL IT BUZZ").map((line) => line.slice(line.length > 5 && !/^[\d.-]+$/.test(line[1]) ? 2 : 1));
  same((await cards("clearance")).map((line) => [line[0], line[1], line[3]]), picked.map((line) => line.slice(0, 3)), `plucks, ${where}`);
  if (result.visits.length > 1) await visitsAgree(page, text, result.visits, where);
  same(await page.locator("#steps .do").allTextContents(), JSON.parse(run("plan", "--json", "--units", units, yaml)).steps.map((one) => one.do), `steps, ${where}`);
  check((await page.locator("#findings [data-code]").count()) >= result.findings.length, `findings, ${where}`);
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
