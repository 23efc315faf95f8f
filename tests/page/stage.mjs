// SPDX-License-Identifier: MIT
// A browser, a server on a folder of its own, and counting: what the page's checks stand on.
import {execFileSync, spawn} from "node:child_process";
import {mkdtempSync, rmSync} from "node:fs";
import {createRequire} from "node:module";
import {tmpdir} from "node:os";
import {dirname, join} from "node:path";
import {fileURLToPath} from "node:url";
import {check, same} from "./count.mjs";

export {check, report, same} from "./count.mjs";

export const top = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
const require = createRequire(join(top, "build", "page", "/"));
const {chromium} = require("playwright-core");
export const axe = require.resolve("axe-core/axe.min.js");

export const program = join(top, "build", "check", "sillet");
const environment = {...process.env, SILLET_PROFILES: join(top, "profiles")};

export const run = (...words) => execFileSync(program, words, {env: environment, maxBuffer: 1 << 24, stdio: ["ignore", "pipe", "pipe"]});

// The sanitized program, unless the one that is installed is meant.
export async function serve(serving = program, options = null) {
  const folder = mkdtempSync(join(tmpdir(), "sillet-page-"));
  const child = spawn(serving, ["serve", "--port", "0", ...(options || ["--folder", folder])], {env: environment});
  let said = "";
  child.stderr.on("data", (bytes) => process.stdout.write(bytes));
  const address = await new Promise((resolve, reject) => {
    child.stdout.on("data", (bytes) => {
      said += bytes;
      const found = said.match(/http:\S+/);
      if (found) resolve(found[0]);
    });
    child.on("exit", () => reject(new Error(`the server ended: ${said}`)));
  });
  const stop = async () => {
    const ended = new Promise((resolve) => child.on("exit", resolve));
    child.kill("SIGINT");
    same(await ended, 0, "the server ends cleanly when asked to");
    rmSync(folder, {recursive: true});
  };
  return {address, folder, stop};
}

// Who runs the tests as root, as a bare machine does, has no sandbox for the browser.
export const open = () => chromium.launch({executablePath: "/usr/bin/chromium", args: ["--no-sandbox"]});

// Checks that stand by themselves, one after another: where one breaks off it fails by its name, and the next is gone on with.
export async function each(checks, where = "", ...given) {
  for (const one of checks) {
    try {
      await one(...given);
    } catch (error) {
      check(false, `${one.name}${where}: ${error.stack}`);
    }
  }
}

// A visitor: a browser of its own, nothing kept. Whatever goes wrong in the page, or leaves this machine, fails.
// ready: what is waited for. failing: the page is to say that it cannot go on, and its scripts may.
export async function visit(browser, address, {ready = "#profiles button:visible, #form:visible", failing = false, ...options} = {}) {
  const context = await browser.newContext({viewport: {width: 1280, height: 900}, acceptDownloads: true, ...options});
  const page = await context.newPage();
  page.setDefaultTimeout(60000);
  page.on("pageerror", (error) => failing || check(false, `the page's script: ${error}`));
  page.on("console", (message) => {
    // The page asks what a wrong sheet's plan is, and is told that there is none.
    if (message.type() === "error" && !/status of (412|422)/.test(message.text())) check(false, `the browser complains: ${message.text()}`);
  });
  page.on("request", (request) => {
    if (!request.url().startsWith(address) && !/^(blob|file):/.test(request.url())) check(false, `asked elsewhere: ${request.url()}`);
  });
  await page.goto(address);
  await page.waitForSelector(ready);
  return page;
}

// What the page offers to save, in a folder; its path.
export async function taken(page, ending, folder) {
  const [download] = await Promise.all([page.waitForEvent("download"), page.click(`[data-file="${ending}"]`)]);
  const path = join(folder, `taken.${ending}`);
  await download.saveAs(path);
  return path;
}

// Opens a sheet from the disk, and waits until it is shown.
export async function opened(page, path) {
  await page.setInputFiles("#file", []);
  const before = await page.evaluate(() => Number(document.body.dataset.shown || 0));
  await page.setInputFiles("#file", path);
  await page.waitForFunction((was) => Number(document.body.dataset.shown || 0) > was, before);
}

export async function type(page, name, text) {
  const field = page.locator(`[name="${name}"]`);
  const before = await page.evaluate(() => Number(document.body.dataset.shown || 0));
  await field.fill(text);
  await page.waitForFunction((was) => Number(document.body.dataset.shown || 0) > was, before);
}

// What is wrong is said once a field is left.
export async function leave(page) {
  await page.evaluate(() => document.activeElement.blur());
  await page.waitForTimeout(30);
}

// Readings of an invented instrument whose saddle stands too high.
export const readings = {
  "readings.0.humidity": "48 %", "readings.0.relief.gap": "0.19",
  "readings.0.saddle_height.treble": "9.0", "readings.0.saddle_height.bass": "10.2",
  ...Object.fromEntries(["2.35", "2.45", "2.6", "2.7", "2.85", "2.95"].map((text, string) => [`readings.0.action.${string}`, text])),
  ...Object.fromEntries(["0.06", "0.06", "0.07", "0.08", "0.09", "0.10"].map((text, string) => [`readings.0.first.${string}`, text])),
};

export async function fillIn(page) {
  for (const [name, text] of Object.entries(readings)) await page.fill(`[name="${name}"]`, text);
  await page.selectOption('[name="readings.0.frets"]', "sound");
  for (const details of await page.locator("details.section").all()) await details.evaluate((one) => { one.open = true; });
  await page.selectOption('[name="instrument.rod"]', "two-way");
  await page.fill('[name="saddle.slot_depth"]', "5");
  await page.fill('[name="nut.seat_to_board"]', "6.5");
  await type(page, "instrument.crown", "1.1");
}

export async function accessible(page, where) {
  // From outside the page, so that its own policy stays in force.
  const {readFileSync} = await import("node:fs");
  await page.evaluate(readFileSync(axe, "utf8"));
  const {violations, passes} = await page.evaluate(() => globalThis.axe.run(document, {resultTypes: ["violations"]}));
  check(passes.length > 10, `${where}: axe looked at something`);
  for (const one of violations) {
    check(false, `${where}: ${one.id}: ${one.help}: ${one.nodes.slice(0, 3).map((node) => node.target.join(" ")).join("; ")}`);
  }
  check(violations.length === 0, `${where}: axe finds nothing`);
}
