// SPDX-License-Identifier: MIT
// What a person does with the page, from nothing to a printed pack.
import {existsSync, readFileSync, readdirSync, writeFileSync} from "node:fs";
import {join} from "node:path";
import {figuresAgree} from "./figures.mjs";
import {accessible, check, fillIn, leave, open, opened, readings, report, run, same, serve, taken, top, type, visit} from "./stage.mjs";

const browser = await open();
const {address, folder, stop} = await serve();

const take = (page, ending) => taken(page, ending, folder);

// All examples, and one whose first string lies on its fret, in both units.
async function examplesAgree() {
  const page = await visit(browser, address);
  const lying = join(folder, "lying.yaml");
  writeFileSync(lying, readFileSync(join(top, "examples/low-first-slot.yaml"), "utf8").replace(/first: \[0\.01,/g, "first: [0,"));
  for (const path of [...globSync("examples", /yaml$/).map((name) => join(top, name)), lying]) {
    await opened(page, path);
    const own = await page.locator('[name="units"]:checked').inputValue();
    for (const units of [own, own === "mm" ? "in" : "mm"]) {
      if (units !== own) await switchTo(page, units);
      await figuresAgree(page, path, units);
    }
    await page.click("#to-start");
    await page.waitForSelector("#start:visible");
  }
  await page.context().close();
}

async function switchTo(page, units) {
  await page.locator(`[name="units"][value="${units}"]`).check();
  await page.waitForFunction((wanted) => document.querySelector("#readings-table")?.textContent.includes(`lengths in ${wanted}`), units);
}

async function newcomer() {
  const page = await visit(browser, address);
  await page.click('[data-profile="steel-string-acoustic"]');
  await fillIn(page);
  const yaml = await take(page, "yaml");
  const text = readFileSync(yaml, "utf8");
  check(/action: \[2.35, .*\] +# open, over fret 12/.test(text), "the saved sheet says beside a value what it is");
  const result = JSON.parse(run("plan", "--json", yaml));
  same(result.saddle.remedy, "sand", "such a saddle is sanded");
  await figuresAgree(page, yaml, "mm");
  await glanceAgrees(page, yaml, "what is next stands on top");
  for (const [id, least] of [["side", 20], ["nut-drawing", 40], ["saddle-drawing", 40]]) {
    const shapes = await page.locator(`#${id} svg path, #${id} svg line`).count();
    check(shapes >= least, `${id} is drawn: ${shapes} shapes`);
  }
  const pack = join(folder, "by-hand.pdf");
  run("draw", yaml, "-o", pack);
  check(readFileSync(await take(page, "pdf")).equals(readFileSync(pack)), "the printed pack is the one of sillet draw");
  for (const ending of ["svg", "dxf", "stl"]) {
    run("draw", yaml, "-o", join(folder, `by-hand.${ending}`));
    check(readFileSync(await take(page, ending)).equals(readFileSync(join(folder, `by-hand.${ending}`))), `${ending} is the one of sillet draw`);
  }
  return page;
}

// Tiles and card say what `sillet plan` says on its one screen.
async function glanceAgrees(page, yaml, where) {
  const screen = run("plan", yaml).toString().replace(/\s+/g, " ");
  const tiles = await page.locator("#tiles .tile").evaluateAll((all) => all.map((one) => [one.dataset.stage, one.querySelector(".tile-verdict").lastChild.textContent.replace("\u00AD", ""), one.querySelector(".tile-figures").textContent]));
  same(tiles.map(([name]) => name), ["relief", "frets", "nut", "saddle", "tuning"], `five tiles: ${where}`);
  for (const [name, verdict, figures] of tiles) {
    if (name !== "tuning" || screen.includes(" tuning ")) check(screen.includes(`${name} ${verdict}${figures ? ` ${figures}` : ""}`), `${where}: ${name} ${verdict} ${figures} / ${screen}`);
  }
  const words = await page.textContent("#next .next-do");
  check(screen.includes(`NEXT`) && screen.includes(words), `${where}: ${words} / ${screen}`);
  const large = await page.locator("#next .large-figure b").allTextContents();
  check(large.every((one) => words.includes(one)), `${where}: the large figures are the sentence's: ${large}`);
  const line = await page.textContent("#next-short"), [label] = await page.locator("#next .large-label").allTextContents();
  const figures = await page.locator("#next .large:not(.lesser) .large-figure b").allTextContents();
  if (/caliper|feelers/.test(label)) check(line.includes(label.match(/caliper|feelers/)[0]) && [figures[0], figures.at(-1)].some((one) => line.includes(one)), `${where}: the line in sight stops where the card does: ${line} / ${figures}`);
}

async function nothingLost(page) {
  await page.reload();
  await page.waitForSelector("#side svg");
  for (const [name, text] of Object.entries(readings)) same(await page.inputValue(`[name="${name}"]`), text, `${name} after a reload`);
}

async function unitsSwitch(page) {
  const before = JSON.parse(run("plan", "--json", await take(page, "yaml")));
  await switchTo(page, "in");
  same(await page.inputValue('[name="readings.0.action.0"]'), "2.35 mm", "a figure keeps the unit it was read in");
  const after = JSON.parse(run("plan", "--json", await take(page, "yaml")));
  same([after.stages, after.nut, after.saddle], [before.stages, before.nut, before.saddle], "other units, the same figures");
  await figuresAgree(page, await take(page, "yaml"), "in");
  await switchTo(page, "mm");
}

// The words beside the field are those the sheet reader has for it.
async function flagged(page) {
  await type(page, "readings.0.action.0", "12");
  same(await page.locator('[data-path="readings.0.action"] .flags li').count(), 0, "nothing is said while it is written");
  await leave(page);
  const words = await page.locator('[data-path="readings.0.action"] .flags li').evaluateAll((all) => all.map((one) => one.firstChild.textContent));
  const yaml = await take(page, "yaml");
  writeFileSync(join(folder, "unlikely.yaml"), readFileSync(yaml));
  const {spawnSync} = await import("node:child_process");
  const {program} = await import("./stage.mjs");
  const said = spawnSync(program, ["plan", "--json", yaml], {env: {...process.env, SILLET_PROFILES: join(top, "profiles")}}).stderr.toString();
  check(words.length > 0 && words.every((one) => said.includes(one)), `flagged in the reader's words: ${words} / ${said}`);
  await page.click('[data-path="readings.0.action"] .flags button');
  same(await page.inputValue('[name="readings.0.action.0"]'), "1.2 mm", "what was probably meant is a tap away");
  await page.fill('[name="readings.0.action.0"]', "2..3");
  await leave(page);
  await page.waitForSelector('[data-path="readings.0.action"] .flags .error');
  same(await page.getAttribute('[name="readings.0.action.0"]', "aria-invalid"), "true", "a wrong value is marked");
  check(await page.locator("#errors").isVisible() && await page.locator("#stale").isVisible(), "errors are listed, and the plan said to be from before");
  await accessible(page, "with an error");
  await type(page, "readings.0.action.0", "2.35");
  same(await page.locator("#errors").isVisible(), false, "and all is well again");
}

async function saving(page) {
  await page.click("#save");
  await page.fill("#save-name", "first");
  await page.click('#save-form [value="save"]');
  await page.waitForSelector("#save-as", {state: "hidden"});
  const path = join(folder, "first.yaml");
  same(JSON.parse(run("plan", "--json", path)).saddle.remedy, "sand", "what was saved is planned the same");
  const other = readFileSync(path, "utf8").replace("48 %", "51 %");
  writeFileSync(path, other);
  await type(page, "readings.0.humidity", "49 %");
  await page.click("#save");
  await page.waitForSelector("#save-over:visible");
  same(readFileSync(path, "utf8"), other, "another's change is not written over");
  await accessible(page, "two versions");
  await page.click("#save-over");
  await page.waitForSelector("#save-as", {state: "hidden"});
  check(readFileSync(path, "utf8").includes("49 %"), "until someone says so");
  await page.click("#to-start");
  await page.waitForSelector('[data-sheet="first.yaml"]');
  await cardsAgree(page);
  await page.click('[data-sheet="first.yaml"]');
  await page.waitForSelector("#side svg");
  same(await page.inputValue('[name="readings.0.humidity"]'), "49 %", "and opens it");
}

// The cards say what the table of `sillet plan FOLDER` says: what is next, and what it waits for.
async function cardsAgree(page) {
  const names = ["high-saddle.yaml", "bowed-neck.yaml", "seven-string-zero-fret.yaml", "low-saddle.yaml"];
  for (const name of names) writeFileSync(join(folder, name), readFileSync(join(top, "examples", name)));
  await page.reload();
  await page.waitForSelector(`[data-sheet="${names[0]}"]`);
  for (const name of [...names, "first.yaml"]) {
    const line = run("plan", join(folder, name), join(folder, name)).toString().split("\n").find((one) => / {2}\S/.test(one) && !one.startsWith("SHEET"));
    const [next, waits] = line.trim().split(/ {2,}/).slice(-2);
    const card = await page.locator(`[data-sheet="${name}"]`).textContent();
    check(card.endsWith(`Next: ${next}${waits === "nothing" ? "" : `Waits for: ${waits}`}`), `${name}: "${card}" says what the table says: ${next} | ${waits}`);
  }
  check((await page.locator('[data-sheet="high-saddle.yaml"] strong').textContent()) === "26-044 Lower the saddle", "a card has the job's reference and title");
  await accessible(page, "the folder's cards");
}

// A full folder is shown part after part, and the keyboard goes on at the first of the new ones.
async function manySheets() {
  const shop = await serve();
  for (let k = 0; k < 450; k++) writeFileSync(join(shop.folder, `job-${1000 + k}.yaml`), "sillet: 1\nprofile: ukulele\n");
  const page = await visit(browser, shop.address);
  for (const shown of [200, 400]) {
    await page.waitForSelector(`#folder-sheets li:nth-child(${shown})`);
    const words = await page.textContent("#folder-sheets > p");
    check(words.startsWith(`${shown} of 450 sheets`), `says how many there are: ${words}`);
    await page.click("#more-sheets");
    await page.waitForFunction((name) => document.activeElement.dataset.sheet === name, `job-${1000 + shown}.yaml`);
  }
  same(await page.locator("#folder-sheets li").count(), 450, "every sheet of the folder");
  same(await page.locator("#more-sheets").count(), 0, "and no more to be asked for");
  await page.context().close();
  await shop.stop();
}

async function visits() {
  const page = await visit(browser, address);
  await opened(page, join(top, "examples", "high-saddle.yaml"));
  same(await page.locator("#visits-table tbody tr").count(), 3, "two visits and the work between them");
  await page.click("#again");
  same(await page.locator('[name^="readings.2."]').evaluateAll((all) => all.filter((one) => one.tagName === "INPUT" && one.value).map((one) => one.name)), ["readings.2.date"],
    "a new visit is blank, but for its day");
  await type(page, "readings.2.relief.gap", "0.21");
  const again = JSON.parse(run("plan", "--json", await take(page, "yaml")));
  same(again.visits.slice(0, 2), JSON.parse(run("plan", "--json", join(top, "examples", "high-saddle.yaml"))).visits, "the older visits are kept");
  same(again.visits[2].read, [null, null, null, null, null, null], "and nothing of them is read again");
  same(await page.locator("#visits-table tbody tr").count(), 5, "and the new one stands below");
  await accessible(page, "a new visit");
  await page.context().close();
}

async function answered(page, kind, ...words) {
  await page.click("#tap-start");
  await page.click(`#question [data-profile="${kind}"]`);
  for (const word of words) await page.click(`[data-answer="${word}"]`);
}

// Relief first, with its verdict; slots only where relief and frets are right, the saddle only where all are.
async function taps() {
  const page = await visit(browser, address);
  await answered(page, "electric-guitar", "yes", "unknown", "no", "wide");
  check((await page.locator(".verdict").textContent()).includes("too much bow"), "the relief's verdict comes at once");
  await accessible(page, "the truss rod's question");
  for (const word of ["two-way", "works", "sound"]) await page.click(`[data-answer="${word}"]`);
  await accessible(page, "a question");
  same(await page.locator("#question input:checked").count(), 0, "nothing is chosen beforehand");
  await page.locator('[name="string-0"][value="none"]').check();
  await page.click("#question .primary");
  await page.waitForSelector("#tap-steps li");
  const told = await page.locator(".verdicts li").allTextContents();
  check(/^Relief: too much bow/.test(told[0]) && told.length === 2 && /^Nut and saddle: not judged/.test(told[1]), `too much bow, and nothing of nut or saddle: ${told}`);
  check(/rod/i.test(await page.locator("#tap-steps").textContent()), "the plan has the rod to speak of");
  await accessible(page, "the taps' end");
  await page.click("#tap-go");
  same([await page.inputValue('[name="readings.0.relief.gap"]'), await page.inputValue('[name="readings.0.first.0"]'), await page.inputValue('[name="instrument.rod"]'),
    await page.inputValue('[name="instrument.rod_state"]')], ["wide", "none", "two-way", "works"], "what was tapped stands in the sheet, string by string");
  await page.waitForSelector('[data-code="slot-low"]');
  await page.context().close();

  for (const [words, string, saddle, wanted] of [
    [["no", "none", "none", "sound"], "ping", null, ["Relief: silent", "Nut and saddle: not judged"]],
    [["no", "ping", "none", "dents"], "ping", null, ["Relief: a small gap", "Frets: worn spots", "Nut and saddle: not judged"]],
    [["no", "ping", "one-way", "stuck", "sound"], "wide", null, ["Relief: a small gap", "Nut slots, string 1: too high"]],
    [["no", "ping", "none", "sound"], "ping", "high", ["Relief: a small gap", "Nut: every slot", "Saddle: relief, frets and nut are right, so stiffness"]],
  ]) {
    const other = await visit(browser, address);
    await answered(other, "steel-string-acoustic", ...words);
    await tapStrings(other, string);
    await other.click("#question .primary");
    if (saddle) await other.click(`[data-answer="${saddle}"]`);
    const lines = await other.locator(".verdicts li").allTextContents();
    check(lines.length === wanted.length && lines.every((line, k) => line.startsWith(wanted[k])), `${words}, ${string}: ${lines}`);
    await other.context().close();
  }
  await bowLeft();
  const hand = await visit(browser, address);
  await answered(hand, "electric-guitar", "yes", "unknown", "yes");
  check((await hand.locator("#question").textContent()).includes("It was the hand"), "or at once, where it was the hand");
  await hand.context().close();
}

// That the neck stays as it is can be answered of too much bow alone, tapped or gauged; the plan then sends nobody to the rod.
async function bowLeft() {
  for (const [words, offered] of [[["no", "none", "two-way"], 0], [["no", "ping", "one-way"], 0], [["no", "wide", "one-way"], 1]]) {
    const page = await visit(browser, address);
    await answered(page, "electric-guitar", ...words);
    same(await page.locator('[data-answer="accepted"]').count(), offered, `${words}: whether the neck may stay as it is`);
    await page.context().close();
  }
  for (const gauge of ["", "0.10 mm", "0.016 in"]) {
    const page = await visit(browser, address);
    await answered(page, "steel-string-acoustic", "no", ...(gauge ? [] : ["wide"]));
    if (gauge) {
      await page.selectOption('[name="gauge"]', gauge);
      await page.click("#question .with-gauge button");
    }
    await page.click('[data-answer="two-way"]');
    await page.waitForSelector('[data-answer="stuck"]');
    const bowed = gauge !== "0.10 mm";
    same(await page.locator('[data-answer="accepted"]').count(), bowed ? 1 : 0, `gauged ${gauge}`);
    if (bowed) {
      await page.click('[data-answer="accepted"]');
      await page.click('[data-answer="sound"]');
      await tapStrings(page, "ping");
      await page.click("#question .primary");
      await page.waitForSelector("#tap-steps li");
      const told = await page.locator(".verdicts li").allTextContents();
      check(told.length === 2 && /the neck stays as it is/.test(told[0]) && /^Nut and saddle: measure/.test(told[1]), `${gauge || "tapped"}: ${told}`);
      await page.click("#tap-go");
      const plan = JSON.parse(run("plan", "--json", await take(page, "yaml")));
      same([await page.inputValue('[name="instrument.rod_state"]'), plan.steps.filter((one) => /rod/.test(one.act)).length], ["accepted", 0], `${gauge || "tapped"}: accepted, and no step at the rod`);
    }
    await page.context().close();
  }
}

// A choice on the page has every word that the sheet takes.
async function choicesWhole() {
  const page = await visit(browser, address);
  await opened(page, join(top, "examples", "high-saddle.yaml"));
  const short = await page.evaluate(async () => {
    const all = (await (await fetch("/fields")).json()).filter((one) => one.kind === "choice");
    const shown = all.map((one) => [one, document.querySelector(`#form select[name="${one.path.replace("readings.", "readings.1.")}"]`)]).filter(([, select]) => select);
    return [shown.length > 5, shown.filter(([one, select]) => one.choices.some(([word]) => ![...select.options].some((option) => option.value === word))).map(([one]) => one.path)];
  });
  same(short, [true, []], "every word of each choice is offered");
  await page.context().close();
}

// Each string just clicks, but for the first.
async function tapStrings(page, first) {
  for (let k = 0; k < 6; k++) await page.locator(`[name="string-${k}"][value="${k ? "ping" : first}"]`).check();
}

async function drop(page, text) {
  await page.evaluate((yaml) => {
    const data = new DataTransfer();
    data.items.add(new File([yaml], "dropped.yaml"));
    document.body.dispatchEvent(new DragEvent("drop", {dataTransfer: data, bubbles: true, cancelable: true}));
  }, text);
}

async function dropped() {
  const page = await visit(browser, address);
  await drop(page, "sillet: 1\nprofile: steel-string-acoustic\nreadings:\n  - {relief: 0.2, frets: [{string: 2, fret: 1, off: -0.12}]}\n");
  await page.waitForSelector('[data-code="fret-worn"]');
  same(await page.inputValue('[name="readings.0.frets.0.off"]'), "-0.12", "a dropped file is opened");
  await page.context().close();
}

// A core that nobody gave is marked, and what a saddle would be cut by is not told; given, all is as before.
async function coresAssumed() {
  const page = await visit(browser, address);
  const yaml = join(folder, "cores.yaml");
  const wound = (core) => ["note: E4, gauge: 0.012 in, make: plain-steel", `note: D3, gauge: 0.030 in, make: wound-bronze${core}`, "note: E2, gauge: 0.053 in, make: wound-bronze, core: 0.018 in"];
  const sheet = (core) => `sillet: 1\nprofile: steel-string-acoustic\nunits: mm\ninstrument: {crown: 1.1, head_angle: 14 deg}\nnut: {seat_to_board: 6}\nsaddle: {slot_depth: 5, pin_distance: 10}\n` +
    `strings:\n${wound(core).map((one) => `  - {${one}}\n`).join("")}readings:\n  - {relief: 0.2, action: {treble: 1.8, bass: 2.3}, first: 0.2, frets: sound, saddle_height: {treble: 9, bass: 10}}\n`;
  for (const [core, marked] of [["", [2]], [", core: 0.0135 in", []]]) {
    writeFileSync(yaml, sheet(core));
    await opened(page, yaml);
    await figuresAgree(page, yaml, "mm");
    const result = JSON.parse(run("plan", "--json", yaml));
    same(result.strings.filter((one) => one.assumed.length).map((one) => one.number), marked, `assumed, with a core of "${core}"`);
    same(await page.locator('[data-code="core-assumed"]').count() > 0, marked.length > 0, `the page says so, with a core of "${core}"`);
    same([result.compensation.strings[1].off_slot, result.nut.strings[1].stack_bend].map((one) => one == null), [marked.length > 0, marked.length > 0], "and nothing is cut by it");
    const lifts = await page.locator("#nut-table tbody tr").evaluateAll((rows) => rows.map((row) => row.querySelector('[data-head="Stiffness may lift it by"]').textContent));
    same(lifts.map((one, k) => one === "–" ? k + 1 : 0).filter(Boolean), marked, "nor how far it lifts told");
    if (marked.length) await accessible(page, "assumed cores");
  }
  await page.context().close();
}

// What the page opens and writes again is the same sheet: every example, and the sheets that use every form there is.
async function roundTrip() {
  const page = await visit(browser, address);
  const alone = (path) => !/^profile: .*\.yaml/m.test(readFileSync(join(top, path), "utf8")); // the page cannot see the file beside it
  for (const path of [...globSync("examples", /yaml$/), ...globSync("tests/sheets", /^good-.*yaml$/)].filter(alone)) {
    await page.setInputFiles("#file", []);
    await page.setInputFiles("#file", join(top, path));
    await page.waitForFunction(() => document.querySelectorAll("#steps li").length > 0 && !document.getElementById("work").hidden);
    const again = JSON.parse(run("plan", "--json", await take(page, "yaml")));
    let original = join(top, path);
    const text = readFileSync(original, "utf8");
    if (!/readings"?:/.test(text)) { // the page begins one, of today
      original = join(folder, "begun.yaml");
      writeFileSync(original, `${text}\nreadings: [{date: ${again.visits[0].date}}]\n`);
    }
    const once = JSON.parse(run("plan", "--json", original));
    check(JSON.stringify(again) === JSON.stringify(once), `${path} written again is another sheet`);
    await page.click("#to-start");
    await page.waitForSelector("#start:visible");
  }
  await page.context().close();
}

const globSync = (place, wanted) => readdirSync(join(top, place)).filter((name) => wanted.test(name)).map((name) => join(place, name));

// Tab, arrows, Enter and letters: no mouse.
async function keyboard() {
  const page = await visit(browser, address);
  const tabTo = async (found) => {
    for (let k = 0; k < 80; k++) {
      await page.keyboard.press("Tab");
      if (await page.evaluate(found)) return true;
    }
    return false;
  };
  check(await tabTo(() => document.activeElement.dataset.profile === "steel-string-acoustic"), "Tab comes to the kinds of instrument");
  await page.keyboard.press("Enter");
  await page.waitForSelector("#form:visible");
  check(await tabTo(() => document.activeElement.name === "readings.0.relief.gap"), "and to the relief");
  await page.keyboard.type("0.45");
  const ring = await page.evaluate(() => getComputedStyle(document.activeElement).outlineStyle);
  check(ring !== "none", "one sees where one is");
  check(await tabTo(() => document.activeElement.name === "readings.0.action.5"), "and on through the readings in order");
  await page.waitForSelector('[data-code="relief-high"]');
  await page.evaluate(() => document.getElementById("to-start").focus());
  check(await tabTo(() => document.activeElement.id === "save"), "and to saving");
  await page.keyboard.press("Enter");
  await page.waitForSelector("#save-as[open]");
  await page.keyboard.type("by-keys");
  await page.keyboard.press("Enter");
  await page.waitForSelector("#save-as", {state: "hidden"});
  check(existsSync(join(folder, "by-keys.yaml")), "saved without a mouse");
  await page.context().close();
}

async function narrow() {
  const page = await visit(browser, address, {viewport: {width: 320, height: 640}});
  await page.waitForSelector(".card");
  const wide = () => page.evaluate(() => document.documentElement.scrollWidth);
  same(await wide(), 320, "the start at 320 pixels");
  await page.click('[data-profile="steel-string-acoustic"]');
  await fillIn(page);
  same(await wide(), 320, "the sheet at 320 pixels, all of it open");
  const small = await page.locator("button:visible, input:visible, select:visible, summary:visible").evaluateAll((all) =>
    all.filter((one) => one.getBoundingClientRect().height > 0 && one.getBoundingClientRect().height < 40 && one.type !== "radio" && !one.closest(".findings")).map((one) => one.name || one.textContent));
  same(small, [], "nothing too small for a thumb");
  await accessible(page, "320 pixels");
  await opened(page, join(top, "examples", "twelve-string-saddle.yaml"));
  await page.click("#again");
  await page.waitForSelector("#visits-table .as-cards li");
  same(await wide(), 320, "twelve strings' visits at 320 pixels");
  await page.click("#to-start");
  await answered(page, "electric-bass", "no", "wide");
  same(await wide(), 320, "a question with the verdict before it at 320 pixels");
  await page.context().close();
}

async function lightAndDark() {
  for (const [colorScheme, forcedColors] of [["light", "none"], ["dark", "none"], ["light", "active"]]) {
    const page = await visit(browser, address, {colorScheme, forcedColors});
    await page.waitForSelector(".card");
    await accessible(page, `the start, ${colorScheme}`);
    await page.click('[data-sheet="first.yaml"]');
    await page.waitForSelector("#saddle-drawing svg");
    for (const details of await page.locator("details").all()) await details.evaluate((one) => { one.open = true; });
    await accessible(page, `the sheet, ${colorScheme}, forced colours ${forcedColors}`);
    await page.click("#to-bench");
    await accessible(page, `the keypad, ${colorScheme}`);
    await page.click("#bench-plan");
    await page.click("#to-start");
    await page.waitForSelector("#drafts .card, .card");
    await page.click("#tap-start");
    await page.click('#question [data-profile="electric-guitar"]');
    await page.click('[data-answer="yes"]');
    await accessible(page, `the taps, ${colorScheme}`);
    await page.context().close();
  }
}

try {
  const page = await newcomer();
  await nothingLost(page);
  await unitsSwitch(page);
  await flagged(page);
  await saving(page);
  await page.context().close();
  await examplesAgree();
  await manySheets();
  await visits();
  await taps();
  await dropped();
  await coresAssumed();
  await roundTrip();
  await keyboard();
  await narrow();
  await lightAndDark();
} catch (error) {
  check(false, error.stack);
}
await stop();
await browser.close();
report();
