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
  const tiles = await page.locator("#tiles .tile").evaluateAll((all) => all.map((one) => [one.dataset.stage, one.querySelector(".tile-verdict").lastChild.textContent, one.querySelector(".tile-figures").textContent]));
  same(tiles.map(([name]) => name), ["relief", "frets", "nut", "saddle", "tuning"], `five tiles: ${where}`);
  for (const [name, verdict, figures] of tiles) {
    if (name !== "tuning" || screen.includes(" tuning ")) check(screen.includes(`${name} ${verdict}${figures ? ` ${figures}` : ""}`), `${where}: ${name} ${verdict} ${figures} / ${screen}`);
  }
  const words = await page.textContent("#next .next-do");
  check(screen.includes(`NEXT`) && screen.includes(words), `${where}: ${words} / ${screen}`);
  const large = await page.locator("#next .large-figure b").allTextContents();
  check(large.every((one) => words.includes(one)), `${where}: the large figures are the sentence's: ${large}`);
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
    check(card.includes(`Next: ${next}Waits for: ${waits}`), `${name}: "${card}" says what the table says: ${next} | ${waits}`);
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
  const hand = await visit(browser, address);
  await answered(hand, "electric-guitar", "yes", "unknown", "yes");
  check((await hand.locator("#question").textContent()).includes("It was the hand"), "or at once, where it was the hand");
  await hand.context().close();
}

// Each string just clicks, but for the first.
async function tapStrings(page, first) {
  for (let k = 0; k < 6; k++) await page.locator(`[name="string-${k}"][value="${k ? "ping" : first}"]`).check();
}

// What nobody tapped is not written down; what was tapped outlives a reload at every question; a gauge everyone has will do.
async function tapsKept() {
  const page = await visit(browser, address);
  await page.click("#tap-start");
  await page.click('#question [data-profile="steel-string-acoustic"]');
  const reload = async (wanted) => {
    await page.waitForFunction((words) => document.querySelector("#question h1")?.textContent.includes(words), wanted);
    await page.reload();
    await page.waitForFunction((words) => document.querySelector("#question h1")?.textContent.includes(words), wanted);
  };
  await reload("Do you hear a buzz");
  await page.click('[data-answer="yes"]');
  await reload("Which note buzzes");
  await page.selectOption('[name="note-string"]', "2");
  await page.selectOption('[name="note-fret"]', "5");
  await page.click("#question .primary");
  await reload("press close behind the fret");
  await page.click('[data-answer="no"]');
  await reload("is there a gap in the middle");
  await page.selectOption('[name="gauge"]', "0.009 in");
  await page.click("#question .with-gauge button");
  await reload("Is there a truss rod");
  check((await page.textContent(".verdict")).startsWith("Relief: in range, 0.23"), `0.009 in is judged: ${await page.textContent(".verdict")}`);
  await page.click('[data-answer="none"]');
  await reload("Frets: do you see");
  await page.click('[data-answer="sound"]');
  await reload("Nut: is there a gap");
  await page.locator('[name="string-2"][value="wide"]').check();
  await page.click("#question .primary");
  await reload("What the taps tell");
  check((await page.locator(".verdicts li").allTextContents()).some((one) => one.startsWith("Nut slots, string 3: too high")), "the relief being right, the nut is judged");
  const [download] = await Promise.all([page.waitForEvent("download"), page.click("#tap-page")]);
  check(readFileSync(await download.path()).subarray(0, 5).toString() === "%PDF-", "a page for a repairer");
  await page.click("#tap-go");
  const text = readFileSync(await take(page, "yaml"), "utf8");
  check(text.includes("first: [~, ~, wide, ~, ~, ~]") && text.includes("buzz: [{string: 2, fret: 5}]") && text.includes("gap: 0.009 in"), `only what was tapped is in the sheet: ${text}`);
  await page.context().close();
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
    const lifts = await page.locator("#nut-table tbody tr").evaluateAll((rows) => rows.map((row) => [...row.querySelectorAll("td")].at(-1).textContent));
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

// A draft of the page before this one, one of a later page, one that is broken; a browser that keeps nothing.
async function draftsKept() {
  const page = await visit(browser, address);
  await page.evaluate(() => {
    localStorage.setItem("sillet draft", JSON.stringify({own: [["sillet", "1"], ["profile", "ukulele"], ["job.title", "From before"], ["readings.0.relief.gap", "0.1"]], name: "", tag: null, saved: "", screen: "work"}));
    localStorage.setItem("sillet draft later", JSON.stringify({version: 9, own: {}, other: 1}));
    localStorage.setItem("sillet draft broken", "{");
  });
  await page.reload();
  await page.waitForSelector("#drafts li:nth-child(3)");
  await accessible(page, "drafts on the first page");
  same(await page.locator("#drafts strong").allTextContents().then((all) => all.sort()), ["A draft this page cannot read", "A draft this page cannot read (2)", "From before"], "each is there");
  const [download] = await Promise.all([page.waitForEvent("download"), page.click('[data-draft="sillet draft later"]')]);
  check(readFileSync(await download.path(), "utf8").includes('"other":1'), "what this page cannot read may be taken along");
  await page.click('#drafts [aria-label="Remove From before"]');
  await page.click("#told button");
  await page.click('[data-draft="sillet draft"]');
  await page.waitForSelector("#form .field");
  same(await page.inputValue('[name="readings.0.relief.gap"]'), "0.1", "a draft of an older page goes on");
  same(await page.evaluate(() => localStorage.getItem("sillet draft broken")), "{", "and nothing unreadable was touched");
  await page.context().close();

  const context = await browser.newContext();
  await context.addInitScript(() => Object.defineProperty(window, "localStorage", {get() { throw new DOMException("refused", "SecurityError"); }}));
  const bare = await context.newPage();
  bare.on("pageerror", (error) => check(false, `the page's script: ${error}`));
  await bare.goto(address);
  await bare.waitForSelector("#keeping:visible");
  check((await bare.textContent("#keeping")).includes("keeps no drafts"), "a browser that keeps nothing: said before there is anything to lose");
  await bare.click('[data-profile="ukulele"]');
  await bare.fill('[name="readings.0.relief.gap"]', "0.12");
  await bare.click("#to-start");
  await bare.click("#drafts .card");
  same(await bare.inputValue('[name="readings.0.relief.gap"]'), "0.12", "as long as the window is open, it is kept");
  const [file] = await Promise.all([bare.waitForEvent("download"), bare.click("#keep-file-now")]);
  check(readFileSync(await file.path(), "utf8").includes("0.12"), "and may be had as a file");
  await context.close();
}

// Letter by letter, the first of six figures: nothing is red, nothing is complained of; and a clean sheet comes of it.
async function neverScolds() {
  const page = await visit(browser, address);
  await page.click('[data-profile="steel-string-acoustic"]');
  const red = () => page.evaluate(() => {
    const colours = ["142, 31, 20", "248, 227, 220"]; // --stop and --stop-ground, light
    return [...document.querySelectorAll("body *")].filter((one) => one.checkVisibility() && (() => {
      const style = getComputedStyle(one);
      return colours.some((colour) => [style.color, style.borderLeftColor, style.borderTopColor, style.backgroundColor].some((own) => own.includes(colour)));
    })()).map((one) => `${one.tagName} ${one.className} ${one.textContent.slice(0, 40)}`).filter((one) => !/care-line|^STRONG  Care/.test(one));
  });
  for (const [name, letters] of [["readings.0.first.2", "0.07"], ["readings.0.action.0", "2.35"], ["readings.0.relief.gap", "Ping"], ["readings.0.humidity", "47"], ["readings.0.saddle_height.treble", "9.05"]]) {
    await page.focus(`[name="${name}"]`);
    for (const letter of letters) {
      await page.keyboard.type(letter);
      await page.waitForTimeout(60);
      same([await red(), await page.locator(".flags li").count(), await page.locator("#errors").isVisible()], [[], 0, false], `nothing red at ${name}: ${letter} of ${letters}`);
    }
    if (name.endsWith("treble")) continue; // the other end is still to come
    await leave(page);
    same(await page.locator(".flags li.error").count(), 0, `nor afterwards: ${letters} in ${name}`);
  }
  const yaml = await take(page, "yaml");
  check(/humidity: 47 %/.test(readFileSync(yaml, "utf8")) && /gap: ping/.test(readFileSync(yaml, "utf8")) && readFileSync(yaml, "utf8").includes("first: [~, ~, 0.07, ~, ~, ~]"), "as it was meant");
  await page.locator('details:has([name="strings.0.gauge"])').evaluate((one) => { one.open = true; });
  const core = (path) => JSON.parse(run("plan", "--json", path)).strings[0].unit_mass;
  const own = core((writeFileSync(join(folder, "whole.yaml"), "sillet: 1\nprofile: steel-string-acoustic\n"), join(folder, "whole.yaml")));
  await type(page, "readings.0.saddle_height.bass", "9.9");
  await type(page, "strings.0.gauge", "0.020 in");
  check(core(await take(page, "yaml")) > own * 1.5, "a string of its own");
  await type(page, "strings.0.gauge", "");
  same(core(await take(page, "yaml")), own, "cleared, it is the profile's again in fact");
  await page.context().close();
}

// A job at 375 x 800 by touch, one reading at a time; what is next in sight without scrolling.
async function byTouch() {
  const page = await visit(browser, address, {viewport: {width: 375, height: 800}, hasTouch: true, isMobile: true});
  await page.tap('[data-profile="steel-string-acoustic"]');
  await page.waitForSelector("#next:visible");
  await page.tap("#to-bench");
  const key = (name) => page.tap(`#bench-pad [data-key="${name}"]`);
  const label = () => page.textContent("#bench-label");
  for (const letter of "48") await key(letter);
  await accessible(page, "the bench keypad");
  same(await page.evaluate(() => [document.documentElement.scrollHeight <= 800, document.documentElement.scrollWidth]), [true, 375], "the keypad is as large as the screen, and no larger");
  await page.tap("#bench-next");
  for (const letter of "0.19") await key(letter);
  await page.waitForFunction(() => document.getElementById("bench-range").textContent.includes("in range"));
  await page.waitForFunction(() => document.getElementById("bench-label").textContent === "Frets");
  await key("sound");
  for (const reading of ["0.06", "0.06", "0.07", "0.08", "0.09", "0.10", "2.35", "2.45", "2.60", "2.70", "2.85", "2.95", "9.00"]) {
    const was = await page.textContent("#bench-count");
    await page.waitForFunction((count) => document.getElementById("bench-count").textContent === count, was);
    const place = Number(was.split(" ")[0]);
    if (place < 4) await page.waitForFunction(() => document.getElementById("bench-count").textContent.startsWith("4 "));
    const at = await page.textContent("#bench-count");
    for (const letter of reading) await key(letter);
    await page.waitForFunction((count) => document.getElementById("bench-count").textContent !== count, at);
  }
  await page.reload();
  await page.waitForSelector("#bench:visible");
  same([await label(), await page.textContent("#bench-which")], ["Saddle height", "String 6"], "a reload comes back to the reading that is next");
  for (const letter of "10.20") await key(letter);
  await page.waitForSelector("#work:visible");
  await page.waitForFunction(() => document.querySelector('[data-stage="saddle"] .tile-figure')?.textContent === "2.35 to 2.95");
  const shown = await page.evaluate(() => { const box = document.querySelector("#next h2").getBoundingClientRect(); return [scrollY, box.top >= 0 && box.bottom <= innerHeight]; });
  same(shown, [0, true], "what is next is in sight without scrolling");
  await accessible(page, "the sheet at 375 pixels");
  const yaml = await take(page, "yaml");
  const result = JSON.parse(run("plan", "--json", yaml));
  same([result.saddle.strings.map((one) => one.now), result.nut.strings[5].verdict], [[2.35, 2.45, 2.6, 2.7, 2.85, 2.95], "leave"], "each reading went to its place");
  await page.context().close();
}

// Whatever a sheet may say has a field, and a kind of bridge only what it has.
async function wholeJob() {
  const page = await visit(browser, address);
  const known = await page.evaluate(async () => (await fetch("/fields")).json());
  await opened(page, join(top, "examples", "high-saddle.yaml"));
  const own = /^(sillet|units|profile|styles|attacks|materials|plausible)(\.|$)/; // set otherwise, or a profile's
  const lists = /^(strings|readings|readings\.(relief|frets|buzz)(\..*)?)$/; // rows of their own
  const missing = await page.evaluate((paths) => paths.filter((path) => {
    const at = path.replace(/^readings\./, "readings.1.").replace(/^strings\./, "strings.0.");
    return ![...document.querySelectorAll("#form [name], #form .field")].some((one) => [one.name, one.dataset.path].some((name) => name && (name === at || name.startsWith(`${at}.`) || at.startsWith(`${name}.`))));
  }), known.filter((one) => one.kind !== "part" && !own.test(one.path) && !lists.test(one.path)).map((one) => one.path));
  same(missing, [], "what the page cannot say");
  check(await page.locator('[data-path="saddle.pitch"]').isHidden(), "a saddle in a slot has no screws");
  await page.locator('details:has([name="saddle.kind"])').evaluate((one) => { one.open = true; });
  await page.selectOption('[name="saddle.kind"]', "two-post");
  await page.waitForSelector('[data-path="saddle.pitch"]:visible');
  check(await page.locator('[data-path="readings.1.saddle_height"] input').first().isVisible(), "what was read stays in sight");
  await page.selectOption('[name="saddle.kind"]', "slotted");
  await page.locator('[data-section="more"]').evaluate((one) => { one.open = true; });
  for (const [name, text] of [["files", "0.25, 0.4, 0.6"], ["readings.1.temperature", "21 C"], ["limits.wear", "0.05"], ["model.press", "3"], ["allowances.leave.slot", "0.03"]]) await type(page, name, text);
  await leave(page);
  same(await page.locator("#errors").isVisible(), false, "all of it is understood");
  const text = readFileSync(await take(page, "yaml"), "utf8");
  for (const one of ["files: [0.25, 0.4, 0.6]", "temperature: 21 C", "wear: 0.05", "press: 3", "leave: {slot: 0.03}"]) check(text.includes(one), `in the sheet: ${one} / ${text}`);
  await accessible(page, "everything else");
  await page.context().close();
}

// An earlier visit is opened, corrected, removed, and put back.
async function visitsOpened() {
  const page = await visit(browser, address);
  const path = join(top, "examples", "high-saddle.yaml");
  await opened(page, path);
  await page.selectOption("#visit-shown", "0");
  same(await page.inputValue('[name="readings.0.action.0"]'), "2.35", "an earlier visit is opened");
  await accessible(page, "an earlier visit");
  await type(page, "readings.0.action.0", "2.36");
  const [first, last] = JSON.parse(run("plan", "--json", await take(page, "yaml"))).visits.map((one) => one.read[0]);
  same([first, last], [2.36, 2.1], "and corrected, the last being as it was");
  await page.click("#visit-remove");
  await page.waitForSelector("#visit-shown", {state: "detached"});
  same(await page.inputValue('[name="readings.0.action.0"]'), "2.1", "one visit is left");
  await page.click("#told button");
  await page.waitForSelector("#visit-shown");
  const again = JSON.parse(run("plan", "--json", await take(page, "yaml"))).visits;
  same(again.map((one) => one.read[0]), [2.36, 2.1], "put back");
  await page.waitForSelector("#next-done");
  await page.click("#next-done");
  same(await page.evaluate(() => document.activeElement.name), "readings.2.action.0", "a step that is done opens the next visit at what is to be read");
  await page.click('#steps [data-stage="rod"] .goes, #steps li .goes');
  check((await page.evaluate(() => document.activeElement.name)).startsWith("readings.2."), "a step leads to its reading");
  await page.context().close();
}

async function folderSearched() {
  const shop = await serve();
  for (const name of ["high-saddle", "bowed-neck", "low-saddle"]) writeFileSync(join(shop.folder, `${name}.yaml`), readFileSync(join(top, "examples", `${name}.yaml`)));
  writeFileSync(join(shop.folder, "uke.yaml"), "sillet: 1\nprofile: ukulele\nreadings: [{date: 2031-01-02}]\n");
  const page = await visit(browser, shop.address);
  await page.waitForSelector('[data-sheet="uke.yaml"]');
  const shown = () => page.locator("#folder-sheets [data-sheet]").evaluateAll((all) => all.map((one) => one.dataset.sheet));
  await page.fill("#folder-words", "ukulele 2031");
  await page.waitForFunction(() => document.querySelectorAll("#folder-sheets [data-sheet]").length === 1);
  same(await shown(), ["uke.yaml"], "by kind and date");
  await page.fill("#folder-words", "no such sheet");
  await page.waitForFunction(() => document.getElementById("folder-sheets").textContent.includes("No sheet has"));
  await accessible(page, "a search that finds nothing");
  await page.fill("#folder-words", "");
  await page.selectOption("#folder-order", "date");
  await page.waitForFunction(() => document.querySelector("#folder-sheets [data-sheet]")?.dataset.sheet === "uke.yaml");
  same((await shown()).length, 4, "newest first, and all of them");
  await page.context().close();
  await shop.stop();
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
  await page.waitForSelector("#visits-table tbody tr");
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
  await tapsKept();
  await draftsKept();
  await neverScolds();
  await byTouch();
  await wholeJob();
  await visitsOpened();
  await folderSearched();
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
