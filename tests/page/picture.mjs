// SPDX-License-Identifier: MIT
// The README's picture of the page: node tests/page/picture.mjs OUT.png [dark]
import {copyFileSync} from "node:fs";
import {join} from "node:path";
import {open, serve, top, visit} from "./stage.mjs";

const [out, scheme] = process.argv.slice(2);
const browser = await open();
const {address, folder, stop} = await serve(join(top, "build", "sillet"));
copyFileSync(join(top, "examples", "high-saddle.yaml"), join(folder, "high-saddle.yaml"));
const page = await visit(browser, address, {viewport: {width: 1280, height: 960}, colorScheme: scheme || "light"});
await page.click('[data-sheet="high-saddle.yaml"]');
await page.waitForSelector("#saddle-drawing svg");
await page.click("#notice button");
await page.evaluate(() => { document.activeElement.blur(); window.scrollTo(0, 0); }); // the card of what is next, from the top
await page.waitForTimeout(800);
await page.screenshot({path: out});
await browser.close();
await stop();
