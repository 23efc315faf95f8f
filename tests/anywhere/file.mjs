// SPDX-License-Identifier: MIT
// The page as one file: opened from a disk, with the network off, from nothing to a printed pack.
import {execFileSync} from "node:child_process";
import {copyFileSync, mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, statSync, writeFileSync} from "node:fs";
import {createServer} from "node:net";
import {tmpdir} from "node:os";
import {join} from "node:path";
import {pathToFileURL} from "node:url";
import {figuresAgree} from "../page/figures.mjs";
import {accessible, check, fillIn, leave, open, opened, readings, report, run, same, serve, taken, top, type, visit} from "../page/stage.mjs";

// Nothing lies beside it.
const folder = mkdtempSync(join(tmpdir(), "sillet-file-"));
const file = join(folder, "sillet.html");
copyFileSync(join(top, "build", "sillet.html"), file);
const address = pathToFileURL(file).href;

// Whatever a page asks of a network goes through this, which counts and answers nothing.
const calls = [];
const proxy = createServer((socket) => {
  socket.on("error", () => {});
  socket.once("data", (bytes) => {
    calls.push(bytes.toString("latin1").split("\r\n")[0]);
    socket.destroy();
  });
});
await new Promise((resolve) => proxy.listen(0, "127.0.0.1", resolve));
const browser = await open();
const counted = {proxy: {server: `http://127.0.0.1:${proxy.address().port}`, bypass: "<-loopback>"}};
const offline = {offline: true};

// Some releases of the browser call home by themselves, with nothing on the screen: whom, is asked first. What the page
// itself asks for is looked at wherever it is opened (visit).
const home = new Set();
async function callsHome() {
  const context = await browser.newContext(counted);
  await (await context.newPage()).goto("about:blank");
  await new Promise((done) => setTimeout(done, 3000));
  await context.close();
  for (const call of calls.splice(0)) home.add(call);
}

const take = (page, ending) => taken(page, ending, folder);

const wordsOf = (pdf) => execFileSync("pdftotext", ["-q", "-layout", pdf, "-"], {maxBuffer: 1 << 24}).toString();

async function newcomer() {
  const page = await visit(browser, address, counted);
  same(await page.locator("#keep-file").count(), 0, "opened from a disk it is saved already");
  await accessible(page, "the start");
  await page.click('[data-profile="steel-string-acoustic"]');
  await fillIn(page);
  const yaml = await take(page, "yaml");
  await figuresAgree(page, yaml, "mm");
  const pack = join(folder, "by-hand.pdf");
  run("draw", yaml, "-o", pack);
  check(wordsOf(await take(page, "pdf")) === wordsOf(pack), "the pack says what that of sillet draw says");
  for (const ending of ["svg", "dxf"]) {
    run("draw", yaml, "-o", join(folder, `by-hand.${ending}`));
    check(readFileSync(await take(page, ending)).equals(readFileSync(join(folder, `by-hand.${ending}`))), `${ending} is the one of sillet draw`);
  }
  await accessible(page, "the sheet");
  return page;
}

async function nothingLost(page) {
  await page.reload();
  await page.waitForSelector("#side svg");
  for (const [name, text] of Object.entries(readings)) same(await page.inputValue(`[name="${name}"]`), text, `${name} after a reload`);
}

// A name that osifont has no letters for is printed all the same.
async function otherLetters(page) {
  await page.locator('details:has([name="job.owner"])').evaluate((one) => { one.open = true; });
  await type(page, "job.owner", "Вера Ωμέγα");
  check(wordsOf(await take(page, "pdf")).includes("Вера Ωμέγα"), "an owner's name in other letters is printed");
}

async function flagged(page) {
  await page.fill('[name="readings.0.action.0"]', "2..3");
  await leave(page);
  await page.waitForSelector('[data-path="readings.0.action"] .flags .error');
  check(await page.locator("#errors").isVisible(), "errors are listed");
  await type(page, "readings.0.action.0", "2.35");
  same(await page.locator("#errors").isVisible(), false, "and all is well again");
}

async function saving(page) {
  await page.click("#save");
  await page.fill("#save-name", "first");
  check((await page.textContent("#save-why")).includes("downloads"), "says where it goes");
  const [download] = await Promise.all([page.waitForEvent("download"), page.click('#save-form [value="save"]')]);
  same(download.suggestedFilename(), "first.yaml", "saved under its name");
  const path = join(folder, "first.yaml");
  await download.saveAs(path);
  same(JSON.parse(run("plan", "--json", path)).saddle.remedy, "sand", "what was saved is planned the same");
  await page.context().close();
}

async function examplesAgree() {
  const page = await visit(browser, address, offline);
  for (const name of readdirSync(join(top, "examples")).filter((one) => one.endsWith(".yaml"))) {
    const path = join(top, "examples", name);
    await opened(page, path);
    await figuresAgree(page, path, await page.locator('[name="units"]:checked').inputValue());
    await page.click("#to-start");
    await page.waitForSelector("#start:visible");
  }
  await page.context().close();
}

// A sheet that rests on the shop's file and an instrument's own is planned as on a disk where they lie beside it: both are given
// to the page once, and kept; one that is missing is said, with a way to give it.
async function givenFiles() {
  const disk = join(folder, "disk"), anna = join(disk, "instruments", "anna.yaml"), shop = join(disk, "shop.yaml"), sheet = join(disk, "anna-1.yaml");
  mkdirSync(join(disk, "instruments"), {recursive: true});
  writeFileSync(shop, "sillet: 1\nname: The bench at the mill\ntools: {action: 0.11}\nfiles: [0.25, 0.4, 0.61]\n");
  writeFileSync(anna, "sillet: 1\nprofile: steel-string-acoustic\ninstrument: {crown: 0.97}\nsaddle: {slot_depth: 4.5}\n");
  writeFileSync(sheet, "sillet: 1\nprofile: instruments/anna.yaml\nreadings:\n  - {relief: 0.2, action: [2.4, 2.5, 2.6, 2.7, 2.8, 2.9], first: 0.08, frets: sound, saddle_height: {treble: 9, bass: 10}}\n");
  const page = await visit(browser, address, offline);
  await accessible(page, "before a file is given");
  await opened(page, join(top, "examples", "high-saddle.yaml"));
  await page.click("#to-start");
  await page.setInputFiles("#file", []);
  await page.setInputFiles("#file", sheet);
  await page.waitForSelector("#error-list .error");
  same(await page.locator("#error-list label.file").allTextContents(), ["Add anna.yaml"], "the file it rests on is missing, and asked for");
  check((await page.textContent("#error-list")).includes("rests on anna.yaml, which this page was not given"), "in words");
  same([await page.locator("#stale").isVisible(), await page.locator("#steps").isVisible()], [false, false], "and no plan of another sheet is shown");
  await page.setInputFiles("#give-missing", shop); // another than it asks for is kept, too
  await page.waitForFunction(() => document.getElementById("told").textContent.startsWith("shop.yaml is kept"));
  await page.setInputFiles("#give-missing", anna);
  await page.waitForSelector("#steps li");
  same(await page.locator("#errors").isVisible(), false, "given, all is well");
  await page.waitForFunction(() => document.querySelector('[name="instrument.crown"]').placeholder === "0.97");
  const written = await take(page, "yaml");
  check(readFileSync(written, "utf8").includes("profile: instruments/anna.yaml"), "the sheet names it as on the disk");
  copyFileSync(written, join(disk, "again.yaml"));
  const [ours, theirs] = [join(disk, "again.yaml"), sheet].map((path) => JSON.parse(run("plan", "--json", path)));
  same(ours, theirs, "and is the same sheet there");
  await figuresAgree(page, join(disk, "again.yaml"), "mm");
  const words = wordsOf(await take(page, "pdf"));
  run("draw", join(disk, "again.yaml"), "-o", join(disk, "own.pdf"));
  const bare = (text) => text.replaceAll(disk, "").replaceAll("/", "");
  check(words.includes("The bench at the mill") && wordsOf(join(disk, "own.pdf")).includes("The bench at the mill"), `the shop's name is on the pack: ${bare(words).slice(0, 200)}`);
  await page.reload();
  await page.waitForSelector("#steps li");
  same(await page.locator("#errors").isVisible(), false, "after a reload both are still there");
  await page.click("#to-start");
  await page.waitForSelector("#given li");
  same(await page.locator("#given li strong").allTextContents(), ["anna.yaml", "shop.yaml"], "and listed");
  await accessible(page, "files given");
  await page.click('#given [aria-label="Remove anna.yaml"]');
  await page.click("#told button");
  same(await page.locator("#given li").count(), 2, "removed, and put back");
  const other = join(disk, "other.yaml");
  writeFileSync(other, "name: no such file\n");
  await page.setInputFiles("#give", other);
  await page.waitForFunction(() => document.getElementById("told").textContent.startsWith("other.yaml is not kept"));
  same(await page.locator("#given li").count(), 2, "what is none of these is not kept");
  await page.context().close();
}

async function noSheets() {
  const page = await visit(browser, address, offline);
  const told = async (bytes, wanted) => {
    const path = join(folder, "no-sheet");
    writeFileSync(path, bytes);
    await page.setInputFiles("#file", []);
    await page.setInputFiles("#file", path);
    await page.waitForFunction((words) => document.getElementById("told").textContent.includes(words), wanted);
    check(await page.locator("#start").isVisible(), `${wanted}: and all is as before`);
  };
  await told(Buffer.alloc(10 << 20, "x"), "Over 256 KiB");
  await told("", "Not opened");
  await told(Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 1, 2, 0xff]), "Not opened");
  await page.context().close();
}

async function notices() {
  const page = await visit(browser, address, {...counted, viewport: {width: 320, height: 640}});
  same(await page.evaluate(() => document.documentElement.scrollWidth), 320, "the start at 320 pixels");
  await page.click("#show-notices");
  await page.waitForSelector("#notices details");
  const names = await page.locator("#notices summary").allTextContents();
  for (const one of ["sillet", "libyaml 0.", "cjson 1.", "libharu 2.", "freetype 2.", "zlib 1", "wasi-libc", "libclang-rt", "fonts-osifont", "fonts-dejavu", "GPL-3"]) {
    check(names.some((name) => name.startsWith(one)), `${one} among the notices: ${names}`);
  }
  const texts = (await page.locator("#notices pre").allTextContents()).join("\n");
  for (const one of ["Permission is hereby granted", "The FreeType Project", "GNU GENERAL PUBLIC LICENSE", "Apache License", "As a special exception, if you create a document which uses this font"]) {
    check(texts.includes(one), `the notices have: ${one}`);
  }
  await page.evaluate(() => { for (const one of document.querySelectorAll("#notices details")) one.open = true; });
  check(await page.evaluate(() => { const all = document.getElementById("notices"); return all.scrollWidth <= all.clientWidth; }), "every notice is as wide as the page");
  await accessible(page, "the notices");
  await page.context().close();
}

// A program that stops is started again, unnoticed where it stopped once; where it stops at the same thing again, it is said, and
// nothing that was written is lost.
async function stopped() {
  const page = await visit(browser, "about:blank", {...offline, ready: "body"});
  await page.addInitScript(() => {
    const instantiate = WebAssembly.instantiate;
    window.stops = 0;
    window.started = 0;
    WebAssembly.instantiate = async (...words) => {
      const {exports} = await instantiate(...words);
      const stopping = (...given) => {
        if (window.stops-- > 0) throw new WebAssembly.RuntimeError("unreachable");
        return exports.module_ask(...given);
      };
      window.started++;
      return {exports: {...exports, module_ask: stopping}};
    };
  });
  await page.goto(address);
  await page.waitForSelector("#profiles button");
  await opened(page, join(top, "examples", "high-saddle.yaml"));
  await page.evaluate(() => { window.stops = 1; });
  await type(page, "readings.1.action.0", "2.31");
  same(await page.evaluate(() => [window.started, document.getElementById("gone").textContent]), [2, ""], "one stop is not noticed");
  await page.evaluate(() => { window.stops = 1000; });
  await page.fill('[name="readings.1.action.0"]', "2.32");
  await page.waitForFunction(() => document.getElementById("gone").textContent.startsWith("The program in this page stopped"));
  await page.evaluate(() => { window.stops = 0; });
  same(await page.inputValue('[name="readings.1.action.0"]'), "2.32", "what was written is kept");
  await type(page, "readings.1.action.1", "2.33");
  const yaml = await take(page, "yaml");
  check(/action: \[2\.32, 2\.33/.test(readFileSync(yaml, "utf8")), "and is in the sheet");
  await figuresAgree(page, yaml, "mm");
  await page.context().close();
}

// A browser without what it takes, and a file that lost its end in the mail.
async function cannot() {
  const page = await visit(browser, "about:blank", {...offline, ready: "body", failing: true});
  await page.addInitScript(() => { delete globalThis.DecompressionStream; });
  await page.goto(address);
  await page.waitForSelector("#cannot");
  await page.context().close();
  const short = join(folder, "short.html");
  const text = readFileSync(file, "utf8");
  const at = text.indexOf('id="carried-program"') + 100000;
  writeFileSync(short, text.slice(0, at) + text.slice(at + 4000));
  const other = await visit(browser, "about:blank", {...offline, ready: "body", failing: true});
  await other.goto(pathToFileURL(short).href);
  await other.waitForSelector("#cannot");
  await other.context().close();
}

async function saved(page, selector) {
  const [download] = await Promise.all([page.waitForEvent("download"), page.click(selector)]);
  same(download.suggestedFilename(), "sillet.html", "saved under its name");
  const path = join(folder, "saved.html");
  await download.saveAs(path);
  check(readFileSync(path).equals(readFileSync(file)), "what is saved is the file");
}

// The page of sillet serve has the file to take along; on a local network the file hands itself out.
async function fetched() {
  const shop = await serve();
  const page = await visit(browser, shop.address);
  await page.waitForSelector("#take-page:visible");
  await accessible(page, "the served page with the file to take along");
  await saved(page, "#take-page a");
  await page.context().close();
  await shop.stop();

  const lan = await serve(undefined, ["--lan", "127.0.0.1"]);
  const phone = await visit(browser, lan.address, {viewport: {width: 375, height: 800}, colorScheme: "dark"});
  const words = await phone.textContent("#start > :first-child");
  check(words.startsWith("Save this file") && words.includes(`belongs to this address (${new URL(lan.address).host})`), `first of all: ${words}`);
  await accessible(phone, "the file from a network");
  await saved(phone, "#keep-file a");
  await opened(phone, join(top, "examples", "high-saddle.yaml"));
  await figuresAgree(phone, join(top, "examples", "high-saddle.yaml"), "mm");
  await phone.context().close();
  await lan.stop();
}

// The proxy counts: were there anything, it would be seen. Last, since it must count.
async function silent() {
  same(calls.filter((call) => !home.has(call)), [], "no request left the browser");
  calls.length = 0;
  const context = await browser.newContext(counted);
  const page = await context.newPage();
  await page.goto("http://elsewhere.example/").catch(() => {});
  check(calls.some((call) => call.includes("elsewhere.example")), "and one that does is counted");
}

try {
  await callsHome();
  const page = await newcomer();
  await nothingLost(page);
  await otherLetters(page);
  await flagged(page);
  await saving(page);
  await examplesAgree();
  await givenFiles();
  await noSheets();
  await notices();
  await stopped();
  await cannot();
  await fetched();
  check(statSync(file).size < 1.5e6, `its size: ${statSync(file).size}`);
  await silent();
} catch (error) {
  check(false, error.stack);
}
await browser.close();
proxy.close();
rmSync(folder, {recursive: true});
report();
