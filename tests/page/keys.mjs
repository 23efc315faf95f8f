// SPDX-License-Identifier: MIT
// A whole job by keyboard alone, from nothing to a pack and a saved sheet: the page as it is served, and as one file where that was built.
// Nothing here touches a mouse, and nothing gives the focus to anything: Tab, Shift-Tab, Enter, Space, Escape and what is typed.
import {execFileSync} from "node:child_process";
import {existsSync, mkdtempSync, readFileSync, rmSync} from "node:fs";
import {tmpdir} from "node:os";
import {join} from "node:path";
import {pathToFileURL} from "node:url";
import {check, open, readings, report, run, same, serve, top, visit} from "./stage.mjs";

const browser = await open();
const folder = mkdtempSync(join(tmpdir(), "sillet-keys-"));
const most = 260; // stops there may be between one thing and another

// What has the focus: by what it is found, and whether a person sees it, where it is.
const focused = (page) => page.evaluate(() => {
  const one = document.activeElement, box = one.getBoundingClientRect();
  const at = document.elementFromPoint(box.left + Math.min(box.width, innerWidth - box.left) / 2, (Math.max(box.top, 0) + Math.min(box.bottom, innerHeight)) / 2);
  const ring = getComputedStyle(one).outlineStyle !== "none" || getComputedStyle(one.closest("label") || one).outlineStyle !== "none";
  return {id: one.id, name: one.name || "", value: one.value || "", profile: one.dataset.profile || "", text: one.textContent.trim().slice(0, 40), tag: one.tagName, ring,
    seen: one.matches(".skip, .unseen") || (at !== null && (one.contains(at) || at.contains(one) || at.closest("label")?.contains(one)))};
});

class Typist {
  constructor(page, where) {
    Object.assign(this, {page, where, stops: 0});
  }

  press(key) { return this.page.keyboard.press(key); }

  // Tab until what is wanted has the focus. Whatever has it on the way is in sight, and one sees that it has it.
  async to(wanted, what, key = "Tab") {
    for (let k = 0; k < most; k++) {
      await this.press(key);
      this.stops++;
      const one = await focused(this.page);
      if (one.tag === "BODY") continue; // the browser's own bars
      if (!one.seen || !one.ring) check(false, `${this.where}: on the way to ${what} not to be seen: ${JSON.stringify(one)}`);
      if (wanted(one)) return true;
    }
    throw new Error(`${this.where}: Tab does not come to ${what}`);
  }

  back(wanted, what) { return this.to(wanted, what, "Shift+Tab"); }

  async write(name, text) {
    await this.to((one) => one.name === name, name);
    await this.page.keyboard.type(text);
  }

  async unfold(title) {
    await this.to((one) => one.tag === "SUMMARY" && one.text === title, `the fold ${title}`);
    await this.press("Enter");
  }
}

// The saved file, of the folder or of the downloads.
async function save(typist, shop) {
  const {page} = typist;
  await typist.back((one) => one.id === "save", "Save");
  await typist.press("Enter");
  await page.waitForSelector("#save-as[open]");
  await page.keyboard.type("by-keys");
  const path = join(shop ? shop.folder : folder, "by-keys.yaml");
  const download = shop ? null : page.waitForEvent("download");
  await typist.press("Enter");
  if (download) await (await download).saveAs(path);
  await page.waitForSelector("#save-as", {state: "hidden"});
  check(existsSync(path), `${typist.where}: saved`);
  same(await page.textContent("#state"), shop ? "Saved in the folder" : "Saved as a file", `${typist.where}: and said so`);
  return path;
}

async function pack(typist, yaml) {
  const {page} = typist;
  await typist.to((one) => one.id === "print", "Print");
  await typist.press("Enter");
  await page.waitForSelector("#printing[open]");
  await typist.to((one) => one.name === "print-paper", "the paper");
  await typist.press("ArrowDown");
  await typist.press("ArrowDown");
  const download = page.waitForEvent("download");
  await typist.press("Enter");
  const path = join(folder, "by-keys.pdf"), own = join(folder, "own.pdf");
  await (await download).saveAs(path);
  run("draw", yaml, "-o", own, "--paper", "Letter");
  same(readFileSync(path).length > 10000 && readFileSync(path).subarray(0, 5).toString(), "%PDF-", `${typist.where}: a pack`);
  check(wordsOf(path) === wordsOf(own) && /Page size: +612 x 792/.test(execFileSync("pdfinfo", [path]).toString()), `${typist.where}: on the paper that was chosen, saying what that of sillet draw says`);
}

const wordsOf = (pdf) => execFileSync("pdftotext", ["-q", "-layout", pdf, "-"], {maxBuffer: 1 << 24}).toString();

async function job(where, address, shop) {
  const page = await visit(browser, address, {reducedMotion: "reduce"});
  const typist = new Typist(page, where);
  await typist.to((one) => one.profile === "steel-string-acoustic", "the kind of instrument");
  await typist.press("Enter");
  await page.waitForSelector("#form:visible");
  const order = ["readings.0.humidity", "readings.0.relief.gap", "readings.0.frets", ...Object.keys(readings).filter((name) => /first/.test(name)),
    ...Object.keys(readings).filter((name) => /action/.test(name)), ...Object.keys(readings).filter((name) => /saddle_height/.test(name))];
  for (const name of order) await typist.write(name, readings[name] || "sound");
  await typist.unfold("The instrument");
  await typist.write("instrument.crown", "1.1");
  await typist.write("instrument.rod", "two");
  await typist.unfold("Nut");
  await typist.write("nut.seat_to_board", "6.5");
  await typist.unfold("Saddle");
  await typist.write("saddle.slot_depth", "5");
  await page.waitForSelector('#next[data-act="sand-saddle"], #next[data-act]');
  same(await page.locator("#errors").isVisible(), false, `${where}: no error on the way`);
  const yaml = await save(typist, shop);
  const result = JSON.parse(run("plan", "--json", yaml));
  same([result.saddle.remedy, result.visits[0].read, result.visits[0].relief, result.visits[0].humidity], ["sand", [2.35, 2.45, 2.6, 2.7, 2.85, 2.95], 0.19, 48], `${where}: every reading is in the sheet`);
  await pack(typist, yaml);
  await done(typist);
  console.log(`${where}: ${typist.stops} stops of Tab`);
  await page.context().close();
}

// From the plan to its reading and back, the next visit, and the way back to the first page.
async function done(typist) {
  const {page, where} = typist;
  await typist.to((one) => one.id === "next-done" || one.id === "next-read", "the next step");
  await typist.press("Enter");
  const now = await focused(page);
  check(/^(readings|saddle|instrument)\./.test(now.name), `${where}: the next step leads to the field it asks for: ${now.name}`);
  await typist.to((one) => one.text.startsWith("Found: ") || one.text === "To the reading", "a way between findings and readings");
  await typist.press("Enter");
  check((await focused(page)).tag !== "BODY", `${where}: and it leads somewhere`);
  await typist.back((one) => one.id === "to-start", "the first page");
  await typist.press("Space");
  await page.waitForSelector("#start:visible");
}

const built = join(top, "build", "sillet.html");
try {
  const shop = await serve();
  await job("served", shop.address, shop);
  await shop.stop();
  if (existsSync(built)) await job("one file", pathToFileURL(built).href, null);
} catch (error) {
  check(false, error.stack);
}
await browser.close();
rmSync(folder, {recursive: true});
report();
