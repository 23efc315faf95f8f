// SPDX-License-Identifier: MIT
// Nothing typed is ever lost: random steps, in the served page and in the one file, and after each the drafts and the folder
// are compared with what was typed. SEED=N STEPS=N as wished: STEPS=1000 is the whole walk.
import {spawn} from "node:child_process";
import {existsSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync} from "node:fs";
import {tmpdir} from "node:os";
import {join} from "node:path";
import {pathToFileURL} from "node:url";
import {check, leave, open, program, report, same, top} from "./stage.mjs";

const seed = Number(process.env.SEED || 20);
const steps = Number(process.env.STEPS || 120);
const kinds = ["steel-string-acoustic", "electric-guitar", "ukulele"];
const browser = await open();

// A small generator of our own, so that a seed gives the same walk (an LCG with the constants of ISO C's example).
function numbers(from) {
  let state = from >>> 0;
  return (below) => {
    state = (Math.imul(state, 1103515245) + 12345) >>> 0;
    return (state >>> 16) % below;
  };
}

// --- a server that can be killed and started again at the same address -------------------------

class Shop {
  constructor() { this.folder = mkdtempSync(join(tmpdir(), "sillet-lost-")); }

  async start() {
    this.child = spawn(program, ["serve", "--port", String(this.port || 0), "--folder", this.folder],
      {env: {...process.env, SILLET_PROFILES: join(top, "profiles")}});
    this.ended = new Promise((resolve) => this.child.on("exit", resolve));
    this.address = await new Promise((resolve, reject) => {
      let said = "";
      this.child.stdout.on("data", (bytes) => { said += bytes; const found = said.match(/http:\S+/); if (found) resolve(found[0]); });
      this.child.on("exit", () => reject(new Error(`the server ended: ${said}`)));
    });
    this.port = new URL(this.address).port;
  }

  async kill() {
    this.child.kill("SIGKILL");
    await this.ended;
  }
}

// --- one walk ----------------------------------------------------------------------------------

const fields = ["readings.0.humidity", "readings.0.relief.gap", ...[0, 1, 2, 3].map((k) => `readings.0.action.${k}`), ...[0, 1, 2, 3].map((k) => `readings.0.first.${k}`),
  "readings.0.saddle_height.treble", "readings.0.saddle_height.bass"];
const texts = ["48 %", "0.19 mm", "2.", "2.35", "Ping", "nonsense", "0.06 mm", "3/32 in", "wide", "9.15", ": [}", "°"];

class Walk {
  constructor(where, shop, address) {
    Object.assign(this, {where, shop, address, random: numbers(seed), windows: [], branches: [], count: 0, done: {}});
  }

  pick(list) { return list[this.random(list.length)]; }

  async enter() {
    this.context ??= await browser.newContext({viewport: {width: 1280, height: 900}, acceptDownloads: true});
    const page = await this.context.newPage();
    page.setDefaultTimeout(20000);
    page.on("pageerror", (error) => check(false, `${this.where}: the page's script: ${error.stack}`));
    await page.goto(this.address);
    await page.waitForSelector("#profiles button");
    this.windows.push(page);
    return page;
  }

  of(page) { return this.branches.find((one) => one.page === page); }
  leave(page) { for (const one of this.branches) if (one.page === page) one.page = null; }

  // A new sheet, which is known by its title.
  async begin(page) {
    await this.toStart(page);
    await page.click(`[data-profile="${this.pick(kinds)}"]`);
    await page.waitForSelector("#form .field");
    this.leave(page);
    const branch = {title: `W${++this.count}`, typed: new Map(), page};
    this.branches.push(branch);
    await page.locator('details:has([name="job.title"])').evaluate((one) => { one.open = true; });
    await page.fill('[name="job.title"]', branch.title);
    branch.typed.set("job.title", branch.title);
  }

  async toStart(page) {
    if (await page.locator("#start").isVisible()) return;
    await page.evaluate(() => document.getElementById("to-start").click());
    await page.waitForSelector("#start:visible");
  }

  async type(page) {
    const branch = this.of(page);
    if (!branch || !await page.locator("#work").isVisible()) return this.begin(page);
    const name = this.pick(fields), text = this.pick(texts);
    const field = page.locator(`[name="${name}"]`);
    if (!await field.isVisible()) return this.type(page); // not every instrument has it
    await field.focus();
    await field.fill("");
    await page.keyboard.type(text);
    branch.typed.set(name, text);
  }

  // Nothing may be waited for between a letter and what follows it.
  async typeAndReload(page) {
    await this.type(page);
    await this.reload(page);
  }

  async reload(page) {
    const branch = this.of(page), working = await page.locator("#work").isVisible();
    await page.reload();
    await page.waitForSelector("#profiles button", {state: "attached"});
    if (!branch || !working) return this.leave(page);
    await page.waitForSelector("#form .field");
    for (const [name, text] of branch.typed) same(await page.inputValue(`[name="${name}"]`), text, `${this.where}: ${name} of ${branch.title} after a reload`);
  }

  async openDraft(page) {
    await this.toStart(page);
    const keys = await page.locator("#drafts [data-draft]").evaluateAll((all) => all.map((one) => one.dataset.draft));
    if (keys.length === 0) return this.begin(page);
    const key = this.pick(keys);
    const own = await page.evaluate((at) => JSON.parse(localStorage.getItem(at)).own, key);
    await page.click(`[data-draft="${key}"]`);
    await page.waitForSelector("#form .field");
    this.leave(page);
    const typed = new Map(own.filter(([path]) => path === "job.title" || fields.includes(path)));
    // What no window has in hand goes on here; what one has is now there twice.
    this.branches = this.branches.filter((one) => one.page || ![...one.typed].every(([path, text]) => typed.get(path) === text));
    this.branches.push({title: typed.get("job.title"), typed, page});
  }

  async back(page) {
    const branch = this.of(page);
    await page.evaluate(() => history.back());
    await page.waitForTimeout(60);
    if (await page.locator("#start").isVisible()) return;
    const title = await page.inputValue('[name="job.title"]').catch(() => "");
    if (branch && title === branch.title) return;
    // Back to an earlier sheet, which goes on in this window.
    this.leave(page);
    const shown = new Map(await page.locator("#form [name]").evaluateAll((all) => all.map((one) => [one.name, one.value])));
    const earlier = this.branches.filter((one) => !one.page && one.title === title).find((one) => [...one.typed].every(([path, text]) => shown.get(path) === text));
    check(earlier || title === "", `${this.where}: Back shows ${title} as it was`);
    if (earlier) earlier.page = page;
  }

  async secondWindow() {
    if (this.windows.length > 2) {
      const page = this.windows.splice(this.random(this.windows.length - 1), 1)[0];
      await page.close();
      return this.leave(page);
    }
    return this.openDraft(await this.enter());
  }

  async full(page) {
    const branch = this.of(page);
    if (!branch || !await page.locator("#work").isVisible()) return;
    await page.evaluate(() => {
      window.kept = Storage.prototype.setItem;
      Storage.prototype.setItem = () => { throw new DOMException("full", "QuotaExceededError"); };
    });
    await this.type(page);
    await page.waitForSelector("#keeping:visible");
    check((await page.textContent("#keeping")).includes("storage is full") && await page.locator("#keep-file-now").isVisible(), `${this.where}: a full storage is said, and a file offered`);
    same(await page.textContent("#state"), "Not saved", `${this.where}: and not called a draft`);
    await page.evaluate(() => { Storage.prototype.setItem = window.kept; });
    await this.type(page);
    await page.waitForSelector("#keeping", {state: "hidden"});
  }

  async undo(page) {
    const branch = this.of(page);
    if (!branch || !await page.locator("#work").isVisible()) return;
    const before = new Map(branch.typed);
    await leave(page);
    await this.type(page);
    await page.keyboard.press("Control+z");
    for (const [name, text] of before) same(await page.inputValue(`[name="${name}"]`), text, `${this.where}: ${name} after taking back`);
    await page.keyboard.press("Control+y");
    for (const [name, text] of branch.typed) same(await page.inputValue(`[name="${name}"]`), text, `${this.where}: ${name} put again`);
  }

  // The server is killed while it saves; it may have saved or not, and the page may not know.
  async killed(page) {
    const branch = this.of(page);
    if (!branch || !await page.locator("#work").isVisible()) return;
    await page.evaluate(() => document.getElementById("save").click());
    await page.waitForTimeout(50);
    if (await page.locator("#save-as").isVisible()) {
      await page.fill("#save-name", `s${this.random(1000)}-${branch.title}`);
      await page.keyboard.press("Enter");
    }
    await page.waitForTimeout(this.random(4));
    await this.shop.kill();
    await this.shut(page);
    await this.type(page);
    await page.waitForFunction(() => document.getElementById("gone").textContent.includes("has ended"));
    await this.shop.start();
    await page.waitForFunction(() => document.getElementById("gone").textContent === "");
    await this.shut(page);
  }

  async shut(page) {
    await page.evaluate(() => { if (document.getElementById("save-as").open) document.getElementById("save-leave").click(); });
  }

  // Another changed the file meanwhile: neither version is lost.
  async conflict(page) {
    const branch = this.of(page);
    if (!branch || !await page.locator("#work").isVisible()) return;
    const name = `c${this.count}-${this.random(10000)}.yaml`;
    writeFileSync(join(this.shop.folder, name), `sillet: 1\nprofile: ukulele\njob: {title: other ${name}}\n`);
    await page.evaluate(() => document.getElementById("save").click());
    await page.waitForTimeout(50);
    if (await page.locator("#save-as").isVisible()) {
      await page.fill("#save-name", name.replace(".yaml", ""));
      await page.keyboard.press("Enter");
      await page.waitForTimeout(80);
      if (await page.locator("#save-theirs").isVisible() && this.random(2)) {
        await page.click("#save-theirs");
        await page.waitForFunction((title) => document.querySelector('[name="job.title"]')?.value === title, `other ${name}`);
        this.leave(page);
        this.branches.push({title: `other ${name}`, typed: new Map([["job.title", `other ${name}`]]), page});
      }
    }
    await this.shut(page);
    check(readFileSync(join(this.shop.folder, name), "utf8").includes("title: other"), `${this.where}: another's sheet is not written over`);
  }

  // A sheet as it is kept: in a draft, or in the folder, whose reader is asked.
  async kept() {
    const page = this.windows.at(-1);
    const drafts = await page.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith("sillet draft")).map((key) => JSON.parse(localStorage.getItem(key)).own));
    const files = this.shop ? readdirSync(this.shop.folder).filter((name) => name.endsWith(".yaml")).map((name) => readFileSync(join(this.shop.folder, name), "utf8")) : [];
    const read = await page.evaluate((all) => Promise.all(all.map(async (body) => (await (await fetch("/read", {method: "POST", body})).json()).entries)), files);
    return [...drafts, ...read.map((entries) => entries.filter((one) => !one[2]).map(([path, text]) => [path.replace(/relief$/, "relief.gap"), text]))].map((own) => new Map(own));
  }

  // What another window took up is kept again by the one that had it in hand, as soon as that hears of it.
  async compare(step, act) {
    for (let tries = 0; tries < 10 && (await this.lost()).length; tries++) await this.windows.at(-1).waitForTimeout(50);
    for (const [branch, near] of await this.lost()) {
      check(false, `${this.where}, seed ${seed}, step ${step}, ${act}: ${branch.title} is lost; kept under its title, with these missing: ${JSON.stringify(near)}`);
      this.branches = this.branches.filter((one) => one !== branch);
    }
    check(true);
  }

  // Of each branch that is nowhere whole: what is missing in those of its title.
  async lost() {
    const kept = await this.kept();
    const meant = (path, text) => (/relief.gap|first/.test(path) ? text.replace("Ping", "ping") : text);
    const has = (own, [path, text]) => own.get(path) === text || own.get(path) === meant(path, text);
    return this.branches.filter((branch) => !kept.some((own) => [...branch.typed].every((pair) => has(own, pair))))
      .map((branch) => [branch, kept.filter((own) => own.get("job.title") === branch.title).map((own) => [...branch.typed].filter((pair) => !has(own, pair)))]);
  }

  async walk() {
    await this.begin(await this.enter());
    const rare = ["begin", "reload", "typeAndReload", "openDraft", "back", "secondWindow", "full", "undo", ...(this.shop ? ["killed", "conflict"] : [])];
    for (let step = 0; step < steps; step++) {
      const act = this.random(100) < 78 ? "type" : this.pick(rare);
      this.done[act] = (this.done[act] || 0) + 1;
      try {
        await this[act](this.pick(this.windows));
      } catch (error) {
        check(false, `${this.where}, seed ${seed}, step ${step}, ${act}: ${error.stack}`);
        break;
      }
      if (act !== "type" || step % 10 === 0) await this.compare(step, act);
    }
    await this.compare(steps, "end");
    console.log(`${this.where}: ${this.count} sheets, ${this.branches.length} states to be kept; ${Object.entries(this.done).map(([act, times]) => `${act} ${times}`).join(", ")}`);
    await this.context.close();
  }
}

const shop = new Shop();
await shop.start();
await new Walk("served", shop, shop.address).walk();
await shop.kill();
rmSync(shop.folder, {recursive: true});

const built = join(top, "build", "sillet.html");
if (existsSync(built)) await new Walk("one file", null, pathToFileURL(built).href).walk();
await browser.close();
report();
