// SPDX-License-Identifier: MIT
// What is begun, left or taken back is there again.
import {check, open, report, same, serve, visit} from "./stage.mjs";

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

for (const one of [twoWindows]) {
  try {
    await one();
  } catch (error) {
    check(false, `${one.name}: ${error.stack}`);
  }
}
await stop();
await browser.close();
report();
