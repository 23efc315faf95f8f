// SPDX-License-Identifier: MIT
// What the page asks its program at a key, and that an answer goes to the sheet that was asked about.
import {check, each, open, report, same, serve, visit} from "./stage.mjs";

const browser = await open();
const {address, stop} = await serve();

const planned = (page) => page.evaluate(() => Number(document.body.dataset.planned || 0));

async function until(page, act) {
  const before = await planned(page);
  await act();
  await page.waitForFunction((was) => Number(document.body.dataset.planned || 0) > was, before);
  await page.waitForTimeout(200);
}

// No drawing for a page that nobody sees, and none of heights that nobody has read.
async function drawingsAsked() {
  const page = await visit(browser, address);
  await page.click('[data-profile="ukulele"]');
  await page.waitForSelector("#nut-drawing svg");
  const drawn = [];
  page.on("request", (request) => { if (request.url().includes("/draw?")) drawn.push(new URL(request.url()).searchParams.get("view")); });
  await until(page, () => page.fill('[name="readings.0.relief.gap"]', "0.1"));
  same([...new Set(drawn)].sort(), ["nut", "saddle"], "no side view before the heights are read");
  for (const [name, text] of [["readings.0.first.0", "0.06"], ["readings.0.first.3", "0.06"], ["readings.0.action.0", "2.2"], ["readings.0.action.3", "2.4"]]) await page.fill(`[name="${name}"]`, text);
  await page.waitForSelector("#side svg");
  check(drawn.includes("side"), "and one as soon as they are");
  await page.click("#to-bench");
  await page.waitForTimeout(300);
  drawn.length = 0;
  await until(page, () => page.click('#bench-pad [data-key="4"]'));
  same(drawn, [], "none while the keypad is shown");
  const before = await page.evaluate(() => Number(document.body.dataset.shown));
  await page.click("#bench-plan");
  await page.waitForFunction((was) => Number(document.body.dataset.shown) > was, before);
  same([...new Set(drawn)].sort(), ["nut", "saddle", "side"], "and all when the plan is back");
  await page.context().close();
}

// A figure with all its places moves on after a while, but not for who has left the keypad meanwhile.
async function leftInTime() {
  const page = await visit(browser, address);
  await page.click('[data-profile="ukulele"]');
  const last = page.locator('[name="readings.0.saddle_height.bass"]');
  await last.waitFor();
  for (const name of await page.locator('#form [name^="readings.0."]').evaluateAll((all) => all.filter((one) => one.tagName === "INPUT" && !/date|bass/.test(one.name) && one.checkVisibility()).map((one) => one.name))) {
    await page.fill(`[name="${name}"]`, name.includes("humidity") ? "48" : name.includes("saddle") ? "9.00" : name.includes("action") ? "2.20" : "0.10");
  }
  await page.selectOption('[name="readings.0.frets"]', "sound");
  await page.click("#to-bench");
  same(await page.textContent("#bench-label"), "Saddle height", "one reading is left");
  for (const key of "9.50") await page.click(`#bench-pad [data-key="${key}"]`);
  await page.goBack();
  await page.waitForSelector("#work:visible");
  await page.click("#to-start");
  await page.waitForTimeout(1000);
  same(await page.locator("#start").isVisible(), true, "nobody is taken from where they went");
  await page.click("#drafts .card");
  same(await last.inputValue(), "9.50", "and the figure is kept");
  await page.context().close();
}

// Holds what is asked where the text sent has a phrase; let go by what is given back.
async function hold(page, path, phrase) {
  let release, asked;
  const released = new Promise((resolve) => { release = resolve; });
  const waited = new Promise((resolve) => { asked = resolve; });
  await page.route((url) => url.pathname === path, async (route) => {
    if ((route.request().postData() || "").includes(phrase)) {
      asked();
      await released;
    }
    await route.fallback();
  });
  return {asked: waited, release};
}

// The answer about a sheet comes when another is in hand: nothing of it is shown there.
async function lateAnswer() {
  const page = await visit(browser, address);
  await page.click('[data-profile="ukulele"]');
  await page.waitForSelector("#nut-drawing svg");
  const first = await hold(page, "/bench", "gap: 0.91"), second = await hold(page, "/bench", "profile: steel");
  await page.fill('[name="readings.0.relief.gap"]', "0.91");
  await first.asked;
  await page.click("#to-start");
  await page.click('[data-profile="steel-string-acoustic"]');
  await page.waitForSelector('[name="readings.0.action.5"]');
  first.release();
  await second.asked;
  same(await page.locator("#tiles").textContent().then((text) => text.includes("0.91")), false, "the other sheet's relief stays away");
  same(await page.evaluate(() => document.body.classList.contains("planless")), true, "no plan before its own");
  second.release();
  await page.waitForFunction(() => !document.body.classList.contains("planless"));
  same(await page.locator("#nut-table tbody tr").count(), 6, "then its own");
  await page.context().close();
}

// Of two sheets opened one after the other the later stays, whichever is read first.
async function openedLast() {
  const page = await visit(browser, address);
  const slow = await hold(page, "/read", "profile: ukulele");
  await page.click('[data-profile="ukulele"]');
  await slow.asked;
  await page.click('[data-profile="steel-string-acoustic"]');
  await page.waitForSelector('[name="readings.0.action.5"]');
  slow.release();
  await page.waitForTimeout(500);
  await until(page, () => page.fill('[name="readings.0.relief.gap"]', "0.2"));
  same(await page.textContent("#sheet-name"), "steel-string acoustic", "the later one");
  same(await page.locator('[name^="readings.0.action."]').count(), 6, "with its own strings");
  await page.context().close();
}

await each([drawingsAsked, leftInTime, lateAnswer, openedLast]);
await stop();
await browser.close();
report();
