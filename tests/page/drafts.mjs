// SPDX-License-Identifier: MIT
// What is begun, left or taken back is there again: two windows, the taps left half way, a full folder searched, a browser that
// keeps nothing, and undo.
import {writeFileSync} from "node:fs";
import {join} from "node:path";
import {check, each, leave, open, report, same, serve, visit} from "./stage.mjs";

const browser = await open();
const {address, stop} = await serve();

// How often a page has written to the browser's storage since this was asked first.
const writes = (page) => page.evaluate(() => {
  if (window.writes === undefined) {
    window.writes = 0;
    const put = Storage.prototype.setItem;
    Storage.prototype.setItem = function (...words) { window.writes++; return put.apply(this, words); };
  }
  return window.writes;
});

const draftsOf = (page) => page.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith("sillet draft")).length);

// A sheet that was begun and has nothing in it yet, while another window shows the first page.
async function twoWindows() {
  const first = await visit(browser, address);
  const second = await first.context().newPage();
  await second.goto(address);
  await second.waitForSelector("#profiles button");
  await writes(second);
  await second.click('[data-profile="ukulele"]');
  await second.waitForSelector("#side-note:visible");
  await second.waitForTimeout(500);
  const before = await writes(second);
  await second.waitForTimeout(1000);
  same(await writes(second) - before, 0, "a sheet that nobody writes into is not written again and again");
  same(await draftsOf(first), 1, "and the other window leaves it alone");
  await first.reload();
  await first.waitForSelector("#profiles button");
  await second.waitForTimeout(500);
  const after = await writes(second);
  await second.waitForTimeout(500);
  same(await writes(second) - after, 0, "nor after the first page was loaded again");
  await second.close();
  await first.reload();
  await first.waitForSelector("#profiles button");
  same([await draftsOf(first), await first.locator("#drafts li").count()], [0, 0], "left for good, it is cleared away");
  await first.context().close();
}

const asked = (page, words) => page.waitForFunction((wanted) => document.querySelector("#question h1")?.checkVisibility() && document.querySelector("#question h1").textContent.includes(wanted), words);

// The questions go on where they were left: by the button, by Back, and after a reload.
async function tapsLeft() {
  const page = await visit(browser, address);
  await page.click("#tap-start");
  await asked(page, "What kind");
  await page.goBack();
  await page.waitForSelector("#start:visible");
  await page.goForward();
  await asked(page, "What kind");
  same(await page.locator("#work").isVisible(), false, "no empty sheet is opened");
  await page.click('#question [data-profile="electric-guitar"]');
  await page.click('[data-answer="yes"]');
  await asked(page, "Which note");
  await page.click("#leave-taps");
  await page.click("#drafts .card");
  await asked(page, "Which note");
  await page.click('[data-answer="unknown"]');
  await page.click('[data-answer="no"]');
  await page.click('[data-answer="wide"]');
  await asked(page, "Is there a truss rod");
  for (const way of ["the button", "Back"]) {
    if (way === "Back") await page.goBack();
    else await page.click("#leave-taps");
    await page.waitForSelector("#start:visible");
    await page.reload();
    await page.click("#drafts .card");
    await asked(page, "Is there a truss rod");
    check((await page.textContent(".verdict")).includes("too much bow"), `left by ${way}, the answers are still there`);
  }
  for (const word of ["none", "sound"]) await page.click(`[data-answer="${word}"]`);
  await page.click("#question .primary");
  await asked(page, "What the taps show");
  await page.click("#tap-go");
  await page.waitForSelector("#work:visible");
  await page.goBack();
  await asked(page, "What the taps show");
  await page.goForward();
  await page.waitForSelector("#work:visible");
  await page.click("#to-start");
  await page.click("#drafts .card");
  await page.waitForSelector("#work:visible");
  same(await page.inputValue('[name="readings.0.relief.gap"]'), "wide", "who went on to the sheet comes back to the sheet");
  await page.context().close();
}

// Letters typed while the rest of a full folder is still coming: each sheet once, and those of the last words.
async function searchedWhileLoading() {
  const shop = await serve();
  for (let k = 0; k < 450; k++) writeFileSync(join(shop.folder, `job-${1000 + k}.yaml`), "sillet: 1\nprofile: ukulele\n");
  const page = await visit(browser, shop.address);
  await page.waitForSelector("#folder-sheets li:nth-child(200)");
  await page.route(/\/sheets\?after=/, async (route) => {
    await new Promise((done) => setTimeout(done, 400));
    await route.continue();
  });
  await page.focus("#folder-words");
  await page.keyboard.type("job", {delay: 100});
  await page.waitForFunction(() => !document.getElementById("more-sheets") && /450 sheets/.test(document.querySelector("#folder-sheets > p")?.textContent));
  await page.waitForTimeout(1000);
  const names = await page.locator("#folder-sheets [data-sheet]").evaluateAll((all) => all.map((one) => one.dataset.sheet));
  same([names.length, new Set(names).size], [450, 450], "every sheet once");
  await page.reload();
  await page.waitForSelector("#folder-sheets li:nth-child(200)");
  await page.fill("#folder-words", "job");
  await page.waitForTimeout(100);
  await page.fill("#folder-words", "job-1449");
  await page.waitForFunction(() => document.querySelectorAll("#folder-sheets [data-sheet]").length === 1);
  await page.waitForTimeout(1000);
  same(await page.locator("#folder-sheets [data-sheet]").evaluateAll((all) => all.map((one) => one.dataset.sheet)), ["job-1449.yaml"], "what was typed last is what is found");
  await page.context().close();
  await shop.stop();
}

// A file that a browser keeps only as long as the window is open is no draft.
async function filesAreNoDrafts() {
  const context = await browser.newContext();
  await context.addInitScript(() => Object.defineProperty(window, "localStorage", {get() { throw new DOMException("refused", "SecurityError"); }}));
  const page = await context.newPage();
  page.on("pageerror", (error) => check(false, `the page's script: ${error}`));
  await page.goto(address);
  await page.click('[data-profile="ukulele"]');
  await page.fill('[name="readings.0.relief.gap"]', "0.12");
  const files = await page.evaluate(async () => {
    const drafts = await import("/drafts.js");
    drafts.keepFile("shop.yaml", "sillet: 1\n");
    return [...drafts.files()];
  });
  same(files, [["shop.yaml", "sillet: 1\n"]], "the file is kept");
  await page.click("#to-start");
  await page.waitForSelector("#drafts .card");
  same(await page.locator("#drafts strong").allTextContents(), ["A ukulele"], "and stands among no drafts");
  await context.close();
}

// A list written in one field is taken back in one step, not by way of an emptied one.
async function undoOfARow() {
  const page = await visit(browser, address);
  await page.click('[data-profile="ukulele"]');
  await page.locator('details:has([name="files"])').evaluate((one) => { one.open = true; });
  await page.fill('[name="files"]', "0.25");
  await leave(page);
  await page.focus('[name="files"]');
  await page.keyboard.press("End");
  await page.keyboard.type(", 0.4");
  await leave(page);
  const shown = [];
  for (const way of ["undo", "undo", "redo", "redo"]) {
    await page.click(`#${way}`);
    shown.push(await page.inputValue('[name="files"]'));
  }
  same(shown, ["0.25", "", "0.25", "0.25, 0.4"], "undo twice and redo twice");
  await page.fill('[name="files"]', "");
  await leave(page);
  await page.click("#undo");
  same(await page.inputValue('[name="files"]'), "0.25, 0.4", "an emptied list comes back");
  await page.context().close();
}

await each([twoWindows, tapsLeft, searchedWhileLoading, filesAreNoDrafts, undoOfARow]);
await stop();
await browser.close();
report();
