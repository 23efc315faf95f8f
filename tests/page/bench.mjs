// SPDX-License-Identifier: MIT
// What keeps a person's work and patience: drafts, taps, complaints that wait, the keypad, every field, visits, the folder.
import {readFileSync, writeFileSync} from "node:fs";
import {join} from "node:path";
import {accessible, check, leave, open, opened, report, run, same, serve, taken, top, type, visit} from "./stage.mjs";

const browser = await open();
const {address, folder, stop} = await serve();

const take = (page, ending) => taken(page, ending, folder);

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
  await reload("What the taps show");
  check((await page.locator(".verdicts li").allTextContents()).some((one) => one.startsWith("Nut slots, string 3: too high")), "the relief being right, the nut is judged");
  const [download] = await Promise.all([page.waitForEvent("download"), page.click("#tap-page")]);
  check(readFileSync(await download.path()).subarray(0, 5).toString() === "%PDF-", "a page for a repairer");
  await page.click("#tap-go");
  const text = readFileSync(await take(page, "yaml"), "utf8");
  check(text.includes("first: [~, ~, wide, ~, ~, ~]") && text.includes("buzz: [{string: 2, fret: 5}]") && text.includes("gap: 0.009 in"), `only what was tapped is in the sheet: ${text}`);
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
    await leave(page);
    same(await page.locator(".flags li.error").count(), 0, `nor afterwards: ${letters} in ${name}`);
  }
  const hints = page.locator('[data-path="readings.0.saddle_height"] .flags li.warning');
  await hints.waitFor();
  check(/bass is still to come/.test(await hints.textContent()), "one end alone is a hint");
  same([await page.locator("#errors").isVisible(), await page.evaluate(() => document.body.classList.contains("stale"))], [false, false], "and no error: the plan goes on");
  const half = await take(page, "yaml");
  check(readFileSync(half, "utf8").includes("saddle_height: {treble: 9.05, bass: ~}"), "the other end stands open in the sheet");
  same(JSON.parse(run("plan", "--json", half)).visits.length, 1, "which sillet plan reads");
  await opened(page, half);
  same([await page.inputValue('[name="readings.0.saddle_height.treble"]'), await page.inputValue('[name="readings.0.saddle_height.bass"]')], ["9.05", ""], "and the page opens again");
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
  await foundBothWays(page, path);
  await page.context().close();
}

// A finding leads to the reading it rests on, and that field to the finding.
async function foundBothWays(page, path) {
  await opened(page, path);
  const codes = JSON.parse(run("plan", "--json", path)).findings.map((one) => one.code);
  check(codes.includes("saddle-high"), `such a sheet: ${codes}`);
  await page.click('#findings [data-code="saddle-high"] .goes');
  same(await page.evaluate(() => document.activeElement.name), "readings.1.action.0", "a finding leads to its reading");
  same(await page.locator('[data-finding="saddle-high"]').count(), 1, "six strings, one way back");
  await page.click('[data-path="readings.1.action"] [data-finding="saddle-high"]');
  same(await page.evaluate(() => [document.activeElement.dataset.code, document.activeElement.checkVisibility()]), ["saddle-high", true], "and the field to the finding");
  await type(page, "readings.1.action.0", "1.8");
  for (let k = 1; k < 6; k++) await type(page, `readings.1.action.${k}`, String(1.8 + k / 10));
  same(await page.locator('[data-finding="saddle-high"]').count(), 0, "which goes with it");
}

// The print dialog: by the words of `sillet draw` the same bytes as that.
async function printed() {
  const page = await visit(browser, address);
  const path = join(top, "examples", "high-saddle.yaml");
  await opened(page, path);
  const yaml = await take(page, "yaml"), own = join(folder, "own.pdf");
  await page.click("#print");
  await accessible(page, "the print dialog");
  await page.keyboard.press("Escape");
  for (const [what, paper, words, name] of [["all", "A4", [], "steel-string-acoustic"], ["saddle", "A3", ["--part", "saddle", "--paper", "A3"], "steel-string-acoustic-saddle"],
    ["nut", "Letter", ["--part", "nut", "--paper", "Letter"], "steel-string-acoustic-nut"], ["card", "A4", ["--sheet", "card"], "steel-string-acoustic-card"],
    ["owner", "Letter", ["--sheet", "owner", "--paper", "Letter"], "steel-string-acoustic-owner"]]) {
    await page.click("#print");
    await page.locator(`[name="print-what"][value="${what}"]`).check();
    await page.locator(`[name="print-paper"][value="${paper}"]`).check();
    const [download] = await Promise.all([page.waitForEvent("download"), page.click('#print-form [type="submit"]')]);
    run("draw", yaml, "-o", own, ...words);
    check(readFileSync(await download.path()).equals(readFileSync(own)), `${what} on ${paper} is what sillet draw ${words.join(" ")} gives`);
    same(download.suggestedFilename(), `${name}.pdf`, `its name: ${what}`);
  }
  await page.click("#print");
  same(await page.locator('#print-form input:checked').evaluateAll((all) => all.map((one) => one.value)), ["owner", "Letter"], "the choice stays");
  await page.click("#print-leave");
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

try {
  await tapsKept();
  await draftsKept();
  await neverScolds();
  await byTouch();
  await wholeJob();
  await visitsOpened();
  await printed();
  await folderSearched();
} catch (error) {
  check(false, error.stack);
}
await stop();
await browser.close();
report();
