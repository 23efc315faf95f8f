// SPDX-License-Identifier: MIT
// What is shown is whole and in its place, from a phone to a wide screen: nothing is cut off or covered, and what is to be touched is large enough.
import {readFileSync, writeFileSync} from "node:fs";
import {join} from "node:path";
import {accessible, check, each, open, report, same, serve, top, visit} from "./stage.mjs";

const browser = await open();
const {address, folder, stop} = await serve();
const example = (name) => readFileSync(join(top, "examples", `${name}.yaml`), "utf8");
const heights = {320: 640, 375: 812, 820: 1180, 1280: 900, 2560: 1440};

for (const name of ["high-saddle", "new-nut", "fanned-acoustic-nut", "bowed-neck", "low-saddle"]) writeFileSync(join(folder, `${name}.yaml`), example(name));
// Its slots in range, so that the saddle is next, with a figure for each of twelve strings.
writeFileSync(join(folder, "twelve.yaml"), example("twelve-string-saddle").replace(/first: \[[^\]]*\]/, "first: [0.06, 0.06, 0.06, 0.06, 0.07, 0.07, 0.08, 0.08, 0.09, 0.09, 0.10, 0.10]"));

writeFileSync(join(folder, "first-job.yaml"), example("first-job/4-done"));
const twelveReadings = example("twelve-string-saddle").split("readings:\n")[1];
writeFileSync(join(folder, "twelve-again.yaml"), example("twelve-string-saddle") + twelveReadings.replace(/date: \S+/, "date: 2026-06-30"));

const unread = example("high-saddle").replace(/    relief: .*\n    action: .*\n    first: .*\n    first_held: 3\n    frets: .*\n/g, "");
writeFileSync(join(folder, "unread.yaml"), unread);

async function show(page, name) {
  if (!await page.locator("#start").isVisible()) await page.click("#to-start");
  const before = await page.evaluate(() => Number(document.body.dataset.shown || 0));
  await page.click(`[data-sheet="${name}.yaml"]`);
  await page.waitForFunction((was) => Number(document.body.dataset.shown || 0) > was, before);
}

// In the page: the box of what is found first, and whether two boxes share any place.
const boxes = (page, ...selectors) => page.evaluate((all) => all.map((one) => {
  const {left, right, top: above, bottom, width, height} = document.querySelector(one).getBoundingClientRect();
  return {left, right, top: above, bottom, width, height};
}), selectors);
const overlap = (a, b) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 0.5 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 0.5;

// The tables of the next step: each string once, and none wider than its card.
async function tablesWhole(page, width) {
  for (const [name, count] of [["high-saddle", 6], ["twelve", 12]]) {
    await show(page, name);
    const {out, strings} = await page.evaluate(() => {
      const card = document.getElementById("next"), words = card.querySelector(".next-words").getBoundingClientRect();
      const tables = [...card.querySelectorAll("table")].filter((one) => one.checkVisibility());
      const around = (one) => { const all = []; for (let at = one; at !== card.parentElement; at = at.parentElement) all.push(at); return all; };
      return {
        out: tables.filter((one) => one.getBoundingClientRect().right > words.right + 0.5 || around(one).some((at) => at.scrollWidth > at.clientWidth + 1)).length,
        strings: tables.flatMap((one) => [...one.querySelectorAll(one.matches(".is-down") ? "tbody th" : "thead th:not(:first-child)")].map((head) => Number(head.textContent))),
      };
    });
    same([out, strings], [0, Array.from({length: count}, (_, k) => k + 1)], `${name} at ${width}: each string's figures are in the card`);
  }
}

// On a phone nothing of the sheet or the plan is wider than its place or smaller than 12 px, all folds open. Each figure of a
// table that became cards stands under the head of its column, and the browser still takes it for a table.
async function wholeOnPhone(page, width) {
  for (const [name, count] of [["high-saddle", 6], ["twelve", 12]]) {
    await show(page, name);
    const {out, small, heads} = await page.evaluate(() => {
      for (const one of document.querySelectorAll("#form details")) one.open = true;
      const shown = [...document.querySelectorAll("body, body *")].filter((one) => one instanceof HTMLElement && one.checkVisibility() && one.clientWidth > 0 && !one.closest("thead") && getComputedStyle(one).clipPath === "none");
      const sizes = (one) => [null, "::before"].map((part) => getComputedStyle(one, part)).filter((style, k) => k === 0 || style.content !== "none").map((style) => parseFloat(style.fontSize));
      const said = (one) => `${one.tagName} ${one.id || one.className} ${one.textContent.slice(0, 30)}: ${one.scrollWidth} > ${one.clientWidth}, ${sizes(one)} px`;
      const headed = (id) => [...document.querySelectorAll(`#${id} td`)].map((one) => [getComputedStyle(one, "::before").content, one.closest("table").querySelectorAll("thead th")[one.cellIndex].textContent]);
      return {
        out: shown.filter((one) => one.scrollWidth > one.clientWidth).map(said), small: shown.filter((one) => Math.min(...sizes(one)) < 12).map(said),
        heads: ["readings-table", "nut-table", "saddle-table", "clearance"].map((id) => { const all = headed(id); return [all.length, all.filter(([above, head]) => !above.startsWith(`"${head}"`))]; }),
      };
    });
    same([out, small], [[], []], `${name} at ${width}: all of it is whole and large enough`);
    const all = {"high-saddle": [4, 6, 7, 5], twelve: [4, 6, 7, 5]}[name]; // nothing is filed at the nut
    same(heads, all.map((columns) => [columns * count, []]), `${name} at ${width}: each figure under its head`);
    same(await tablesHeard(page), all.map((columns) => columns + 1).map((columns) => [columns, count, (columns - 1) * count]), `${name} at ${width}: heard as tables`);
    await accessible(page, `${name} at ${width}`);
  }
}

// No word of a verdict is broken, however narrow its tile, but where it may be hyphenated.
async function verdictsWhole(page, width) {
  for (const name of ["unread", "high-saddle"]) {
    await show(page, name);
    const {words, broken} = await page.evaluate(() => {
      const places = [...document.querySelectorAll(".tile-verdict")].flatMap((one) => [...one.childNodes]).filter((node) => node.nodeType === Node.TEXT_NODE).flatMap((node) => [...node.data.matchAll(/[^\s\u00AD]+/g)].map((word) => [node, word]));
      const topOf = (node, at) => { const range = document.createRange(); range.setStart(node, at); range.setEnd(node, at + 1); return range.getBoundingClientRect().top; };
      const whole = ([node, word]) => Math.abs(topOf(node, word.index + 1) - topOf(node, word.index + word[0].length - 1)) < 1;
      return {words: places.map(([, word]) => word[0]), broken: places.filter((one) => !whole(one)).map(([, word]) => word[0])};
    });
    check(words.length >= 5 && (name !== "unread" || words.join("").includes("measured")), `${name} at ${width}: verdicts ${words}`);
    same(broken, [], `${name} at ${width}: no word of a verdict is broken`);
  }
}

// As the browser tells a screen reader: of each of the plan's tables how many heads of columns, heads of rows and cells.
async function tablesHeard(page) {
  const session = await page.context().newCDPSession(page);
  const {nodes} = await session.send("Accessibility.getFullAXTree");
  await session.detach();
  const byId = new Map(nodes.map((one) => [one.nodeId, one]));
  const within = (one) => [one, ...(one.childIds || []).flatMap((id) => (byId.has(id) ? within(byId.get(id)) : []))];
  const titles = ["Table: Readings, now and after", "Table: Nut", "Table: Saddle", "Table: The hardest pluck that rings clean, newtons"];
  return titles.map((title) => {
    const roles = within(nodes.find((one) => one.role?.value === "region" && one.name?.value === title)).filter((one) => !one.ignored).map((one) => one.role.value);
    return ["columnheader", "rowheader", "cell"].map((role) => roles.filter((one) => one === role || (role === "cell" && one === "gridcell")).length);
  });
}

// What was read at each visit: a table where it has room, else a card for each visit, with the same figures; neither is cut or scrolls.
async function visitsWhole(page, width) {
  for (const [name, count, visits] of [["first-job", 6, 4], ["twelve-again", 12, 2]]) {
    await show(page, name);
    const {asTable, shown, out, rows, cards} = await page.evaluate(() => {
      const box = document.getElementById("visits-table"), edge = box.getBoundingClientRect().right + 0.5;
      const parts = [...box.querySelectorAll("td, th, dt, dd, h3")].filter((one) => one.checkVisibility());
      const figures = (all) => all.map((one) => one.dataset.mm);
      return {
        asTable: box.querySelector("table").checkVisibility(),
        shown: [box.querySelector("table"), box.querySelector(".as-cards")].filter((one) => one.checkVisibility()).length,
        out: parts.filter((one) => one.getBoundingClientRect().right > edge || one.scrollWidth > one.clientWidth + 1).map((one) => one.textContent)
          .concat([...box.querySelectorAll(".scroll")].filter((one) => one.checkVisibility() && one.scrollWidth > one.clientWidth).map(() => "scrolls")),
        rows: figures([...box.querySelectorAll("td[data-mm]")]).sort(), cards: figures([...box.querySelectorAll("dd[data-mm]")]).sort(),
      };
    });
    same([shown, out], [1, []], `${name} at ${width}: the visits are whole, ${asTable ? "in a table" : "in cards"}`);
    same(rows.length, visits * (count + 1) + (visits - 1) * count, `${name} at ${width}: each visit's relief and each string's action, read and expected`);
    same(cards, rows, `${name} at ${width}: cards and table have the same figures`);
    if (width < 400 || (width === 820 && count === 6)) same(asTable, width > 400, `${name} at ${width}: as ${width > 400 ? "a table" : "cards"}`);
  }
}

// Fields of a string each: as many in one row as in the next.
async function evenRows(page, width) {
  await show(page, "twelve");
  const rows = await page.locator(".kind-each .controls").evaluateAll((all) => all.filter((one) => one.checkVisibility() && one.children.length > 1).map((one) => {
    const tops = [...one.children].map((cell) => Math.round(cell.getBoundingClientRect().top));
    return [...new Set(tops)].map((at) => tops.filter((other) => other === at).length);
  }));
  check(rows.length > 2 && rows.every((one) => one.reduce((sum, count) => sum + count) === 12 && new Set(one).size === 1), `twelve strings in even rows at ${width}: ${JSON.stringify(rows)}`);
}

// In inches, too, with the sheet's own figures in millimetres: each figure of a string fits its field, and no table scrolls.
async function inchesWhole(page, width) {
  for (const name of ["new-nut", "fanned-acoustic-nut", "high-saddle", "twelve"]) {
    await show(page, name);
    const before = await page.evaluate(() => Number(document.body.dataset.shown));
    await page.check("[name=units][value=in]", {force: true});
    await page.waitForFunction((was) => Number(document.body.dataset.shown) > was, before);
    const {fields, out, tables} = await page.evaluate(() => {
      for (const one of document.querySelectorAll("#form details")) one.open = true;
      const seen = (all) => [...document.querySelectorAll(all)].filter((one) => one.checkVisibility());
      const cut = (one) => one.scrollWidth > one.clientWidth;
      const inputs = seen("#form :is(.entry, .kind-each) input");
      return {fields: inputs.filter((one) => / mm$/.test(one.value)).length, out: inputs.filter((one) => one.value && cut(one)).map((one) => `${one.name} ${one.value}`),
        tables: seen("#plan .scroll").filter(cut).map((one) => `${one.getAttribute("aria-label")} ${one.scrollWidth}`)};
    });
    check(fields > 0 || name === "new-nut", `${name} in inches at ${width}: fields in millimetres: ${fields}`);
    same([out, tables], [[], []], `${name} in inches at ${width}: all figures are whole`);
  }
}

// Drawings are as wide as there is room, not cut by a box that scrolls.
async function drawingsWhole(page, width) {
  await show(page, "high-saddle");
  const cut = await page.locator("#plan .drawing svg").evaluateAll((all) => all.filter((one) => {
    const box = one.getBoundingClientRect(), section = one.closest("section").getBoundingClientRect();
    return box.width < 100 || box.left < section.left || box.right > section.right || one.parentElement.scrollWidth > one.parentElement.clientWidth;
  }).length);
  same([await page.locator("#plan .drawing svg").count(), cut], [3, 0], `drawings are whole at ${width}`);
  same(await page.evaluate(() => document.documentElement.scrollWidth), width, `nothing is wider than the page at ${width}`);
}

// What lasts stands in the flow and can be closed; it covers nothing, on the plan or at the keypad.
async function noticeCoversNothing(page, width) {
  await show(page, "high-saddle");
  const [notice, ...others] = await boxes(page, "#notice", "header", "#tiles", "#next");
  check(notice.height > 20 && notice.top >= others[0].bottom - 0.5 && !others.some((one) => overlap(notice, one)), `the notice stands under the header and covers nothing at ${width}`);
  await page.click("#to-bench");
  const [same_, ...rest] = await boxes(page, "#notice", "header", "#bench-label", "#bench-pad", ".bench-ways");
  check(same_.height > 20 && !rest.some((one) => overlap(same_, one)), `nor at the keypad at ${width}`);
  const [close] = await boxes(page, "#notice button");
  check(close.height >= 44 && close.width >= 44, `it is closed by a thumb at ${width}: ${close.height}`);
  await page.click("#notice button");
  same(await page.locator("#notice").isVisible(), false, `and gone at ${width}`);
  await page.click("#bench-plan");
  await page.waitForSelector("#work:visible");
}

// One goes on by the one filled button.
async function oneFilled(page, width) {
  await show(page, "high-saddle");
  await page.locator("#next-done").waitFor();
  same(await page.locator("button.primary:visible").evaluateAll((all) => all.map((one) => [one.id, one.textContent])), [["next-done", "Done: measure again"]], `one filled button at ${width}`);
  const [button, card, words] = await boxes(page, "#next-done", "#next", ".next-words");
  check(button.height >= 56 && (width >= 600 || Math.abs(button.width - words.width) < 1) && button.right <= card.right, `large enough at ${width}: ${button.width} x ${button.height}`);
  const small = await page.locator("#undo, #redo").evaluateAll((all) => all.filter((one) => one.getBoundingClientRect().height < 48 || getComputedStyle(one).textDecorationLine !== "none").length);
  const low = await page.locator(".goes, .as-button, .as-link, #visit-remove, #bar button").evaluateAll((all) => all.filter((one) => one.checkVisibility() && one.getBoundingClientRect().height < 44).map((one) => one.textContent));
  same([small, low], [0, []], `what is touched is large enough at ${width}`);
  const [away, choice] = await boxes(page, "#visit-remove", "#visit-shown");
  check(!overlap(away, choice) && (away.left - choice.right > 40 || away.top - choice.bottom > 10), `removing a visit stands apart from choosing one at ${width}`);
}

// A short word for a while, too, leaves header and act free.
async function shortWord(page) {
  await show(page, "high-saddle");
  await page.click("#visit-remove");
  await page.waitForSelector("#told button");
  const [told, ...others] = await boxes(page, "#told", "header", "#tiles", "#next");
  check(!others.some((one) => overlap(told, one)), `a short word covers nothing: ${JSON.stringify(told)}`);
  await page.click("#undo");
  await page.waitForSelector("#visit-shown");
}

// The plan flows in full, as wide as the card above it; the line that stays in sight says what is next.
async function planFlows(page, width) {
  await show(page, "high-saddle");
  const [card, plan] = await boxes(page, "#next", "#plan");
  check(Math.abs(card.right - plan.right) < 1 && Math.abs(card.left - plan.left) < 1 && plan.top >= card.bottom, `the plan is as wide as the card at ${width}`);
  same(await page.evaluate(() => { const one = document.getElementById("plan"); return [getComputedStyle(one).overflowY, one.scrollHeight - one.clientHeight]; }), ["visible", 0], `and flows in full at ${width}`);
  same(await page.locator("#plan .scroll").evaluateAll((all) => all.filter((one) => one.scrollWidth > one.clientWidth).map((one) => one.getAttribute("aria-label"))), [], `with tables that fit at ${width}`);
  await page.evaluate(() => document.getElementById("found-title").scrollIntoView());
  await page.waitForFunction(() => document.getElementById("next-short").textContent.startsWith("Next")).catch(() => {}); // it comes with the scrolling
  const [line, tiles, title] = await boxes(page, "#next-short", "#tiles", "#found-title");
  check(await page.textContent("#next-short") === "Next: Sand the saddle's bottom until the caliper reads 7.90 / 9.00 mm" && Math.abs(line.top - tiles.bottom) < 2 && title.top >= line.bottom, `what is next stays in sight at ${width}`);
}

// Steps without a reading between are gone through one by one.
async function stepsFollow() {
  const page = await visit(browser, address);
  await show(page, "new-nut");
  const seen = [];
  for (let k = 0; k < 4; k++) {
    seen.push([await page.textContent("#next h2"), await page.textContent("#next-done")]);
    if (k < 3) await page.click("#next-done");
  }
  same(seen, [["New nut: fit a blank", "Done: step 3"], ["New nut: mark its slots", "Done: step 4"], ["New nut: cut its slots", "Done: step 5"], ["New nut: shape its top", "Done: measure again"]], "each names the step after it");
  await accessible(page, "a step that follows");
  await page.setViewportSize({width: 375, height: 812});
  await accessible(page, "the same on a phone");
  await page.setViewportSize({width: 1280, height: 900});
  await page.click("#next-back");
  same(await page.textContent("#next h2"), "New nut: cut its slots", "and there is a way back");
  await page.click("#next-done");
  await page.click("#next-done");
  check((await page.evaluate(() => document.activeElement.name)).startsWith("readings.1."), "and at the end the next visit is opened to measure");
  await show(page, "low-saddle");
  same([await page.textContent("#next-done"), await page.locator("button.primary:visible").count()], ["Measure again", 0], "where all is done nothing has to go on");
  await page.context().close();
}

// The keypad says of a reading what the fields say, and what the answer judges by is named.
async function benchSays() {
  const page = await visit(browser, address);
  await show(page, "high-saddle");
  const beside = await page.locator('[data-range="readings.1.humidity"]').textContent();
  await page.click("#to-bench");
  await page.waitForFunction(() => document.getElementById("bench-range").textContent.includes("in range"));
  same([beside, await page.textContent("#bench-range"), await page.textContent("#bench-which"), await page.textContent("#bench-unit")], ["35–65in range", "35 to 65, in range, was 48 %", "", ""], "humidity");
  const said = {};
  for (let k = 0; k < 16; k++) {
    await page.click("#bench-next");
    said[`${await page.textContent("#bench-label")} ${await page.textContent("#bench-which")}`] = `${await page.textContent("#bench-value")} ${await page.textContent("#bench-unit")}: ${await page.textContent("#bench-range")}`;
  }
  same([said["Action over fret 12 String 1 E4"], said["Saddle height String 1"], said["Frets Look along each fret under the strings"]],
    ["2.1 mm: 1.50 to 2.00, over by 0.10, was 2.35", "8.45 mm: was 9.0", "sound : was sound"], "each reading's range, side and what it was");
  await page.click("#bench-plan");
  await show(page, "fanned-acoustic-nut");
  check((await page.textContent('[data-stage="saddle"] .tile-figures')).startsWith("once the nut is done: 2.13 to 2.70"), "a forecast says so on its tile");
  await page.context().close();
}

// Who has sheets finds them before the kinds of a new one; dates are not broken, and nothing is waited for in no words.
async function startInOrder() {
  const page = await visit(browser, address, {viewport: {width: 375, height: 812}});
  await page.waitForSelector("[data-sheet]");
  const [sheets, kinds, link] = await boxes(page, "[data-sheet]", "#profiles", "#to-new a");
  check(sheets.top < kinds.top && link.top < sheets.top && link.height >= 44, "sheets before kinds, and a way to a new one");
  const cards = await page.locator("#folder-sheets .card").evaluateAll((all) => all.map((one) => [one.textContent, one.querySelector(".day").getClientRects().length, [...one.querySelectorAll("span")].map((part) => getComputedStyle(part).fontSize)]));
  check(cards.length === 9 && cards.every(([text, lines, sizes]) => !text.includes("Waits for: nothing") && lines === 1 && new Set(sizes).size === 1), `cards: ${JSON.stringify(cards)}`);
  await page.context().close();
  const bare = await serve();
  const other = await visit(browser, bare.address);
  await other.waitForSelector("#folder-sheets p");
  const [none, first] = await boxes(other, "#open-title", "#profiles");
  check(first.top < none.top && await other.locator("#to-new").isHidden(), "and without sheets the kinds come first");
  await other.context().close();
  await bare.stop();
}

// Answers of some paths come after a time.
const delay = (page, time, ...paths) => page.route((url) => paths.includes(url.pathname), async (route) => {
  await new Promise((done) => setTimeout(done, time));
  await route.continue();
});

// Or not before they are let through, which what is given back does: however long a busy machine takes until then.
async function hold(page, ...paths) {
  let letThrough;
  const free = new Promise((done) => { letThrough = done; });
  await page.route((url) => paths.includes(url.pathname), async (route) => {
    await free;
    await route.continue();
  });
  return letThrough;
}

// In the page, from now on: each time a button is seen at another place, after how many ms, where it is in the window and in the page, what the
// pointer is over, and how many answers came.
const watchButton = (page, button) => page.locator(button).first().evaluate((one) => {
  const began = performance.now();
  const place = () => ({top: one.getBoundingClientRect().top, down: one.getBoundingClientRect().top + window.scrollY});
  const seen = globalThis.seenPlaces = [];
  const look = () => {
    if (globalThis.seenPlaces !== seen) return;
    const {top, down} = place(), last = seen.at(-1);
    if (!last || Math.abs(last.top - top) > 0.5 || Math.abs(last.down - down) > 0.5) {
      const over = [...document.querySelectorAll(":hover")].at(-1);
      const {planned = 0, shown = 0} = document.body.dataset;
      seen.push({ms: Math.round(performance.now() - began), top, down, high: document.documentElement.scrollHeight, over: over ? `${over.tagName} ${over.id || over.className}` : "", planned, shown});
    }
    requestAnimationFrame(look);
  };
  look();
  globalThis.nowPlaces = () => [...seen, {ms: Math.round(performance.now() - began), ...place()}];
});

// What a pointer rests on stays under it when a late answer fills the page above.
async function staysUnderPointer(page, button, come, moves, where) {
  await page.hover(button);
  await watchButton(page, button);
  await come();
  const places = await page.evaluate(() => globalThis.nowPlaces());
  const [first, now] = [places[0], places.at(-1)];
  check(Math.abs(now.top - first.top) <= 1.5, `${where}: ${button} stays where it is: ${JSON.stringify(places)}`);
  same(Math.abs(now.down - first.down) > 20, moves, `${where}: ${button}, the page above it grew: ${JSON.stringify(places)}`);
}

async function nothingMoves(width) {
  const shop = await serve();
  const page = await visit(browser, shop.address, {viewport: {width, height: heights[width]}});
  await page.click('[data-profile="ukulele"]');
  await page.fill('[name="readings.0.relief.gap"]', "0.1");
  for (const name of ["one", "two"]) writeFileSync(join(shop.folder, `${name}.yaml`), example("high-saddle"));
  const other = await page.context().newPage();
  await delay(other, 400, "/sheets");
  for (const button of ["#drafts .card", '[data-profile="ukulele"]', "#tap-start"]) {
    await other.goto(shop.address);
    await other.locator(button).first().waitFor();
    await staysUnderPointer(other, button, () => other.waitForTimeout(600), false, `the first page, opened at ${width}`);
  }
  await other.click('[data-sheet="one.yaml"]');
  await other.waitForSelector("#saddle-drawing svg");
  for (const name of ["three", "four", "five"]) writeFileSync(join(shop.folder, `${name}.yaml`), example("high-saddle"));
  const listIt = await hold(other, "/sheets");
  await other.click("#to-start");
  await staysUnderPointer(other, "#tap-start", () => { listIt(); return other.waitForSelector('[data-sheet="three.yaml"]'); }, true, `the first page again at ${width}`);
  await page.bringToFront();
  await page.waitForFunction(() => document.body.dataset.shown === document.body.dataset.planned);
  const answerIt = await hold(page, "/bench", "/draw");
  for (let k = 0; k < 4; k++) for (const [name, text] of [["first", "0.3"], ["action", "2.2"]]) await page.fill(`[name="readings.0.${name}.${k}"]`, text);
  await staysUnderPointer(page, '[data-file="pdf"]', () => { answerIt(); return page.waitForSelector("#side svg"); }, true, `the plan at ${width}`);
  await page.context().close();
  await shop.stop();
}

for (const width of [375, 820, 1280, 2560]) {
  const page = await visit(browser, address, {viewport: {width, height: heights[width]}, reducedMotion: "reduce"});
  await each([tablesWhole, visitsWhole, evenRows, inchesWhole, drawingsWhole, noticeCoversNothing, oneFilled, ...(width > 1000 ? [shortWord, planFlows] : [])], ` at ${width}`, page, width);
  await page.context().close();
}
for (const width of [320, 1020]) {
  const page = await visit(browser, address, {viewport: {width, height: heights[width] || 900}, reducedMotion: "reduce"});
  await each([visitsWhole], ` at ${width}`, page, width);
  await page.context().close();
}
for (const [width, colorScheme] of [[320, "light"], [320, "dark"], [360, "light"], [375, "dark"], [390, "light"]]) {
  const page = await visit(browser, address, {viewport: {width, height: 700}, reducedMotion: "reduce", colorScheme});
  await each([wholeOnPhone, verdictsWhole], ` at ${width}, ${colorScheme}`, page, width);
  await page.context().close();
}
for (const width of [375, 1280, 2560]) await each([nothingMoves], ` at ${width}`, width);
await each([stepsFollow, benchSays, startInOrder]);
await stop();
await browser.close();
report();
