// SPDX-License-Identifier: MIT
// The program as a module gives what the native one gives: every plan to 1e-6, every drawing on paper byte for byte.
import {execFileSync, spawnSync} from "node:child_process";
import {copyFileSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync} from "node:fs";
import {tmpdir} from "node:os";
import {join} from "node:path";
import {check, report, same} from "../page/count.mjs";

const folder = mkdtempSync(join(tmpdir(), "sillet-module-"));
// The page's scripts, in a folder that says they are modules.
writeFileSync(join(folder, "package.json"), '{"type": "module"}');
for (const name of ["machine.js", "wasi.js"]) copyFileSync(join("src/page/anywhere", name), join(folder, name));
const {Machine} = await import(join(folder, "machine.js"));

const environment = {...process.env, SILLET_PROFILES: "profiles"};
const native = (...words) => execFileSync("build/sillet", words, {env: environment, maxBuffer: 1 << 24, stdio: ["ignore", "pipe", "ignore"]});
const within = (place, wanted) => readdirSync(place).filter((name) => wanted.test(name)).map((name) => join(place, name));
const yaml = readFileSync("examples/high-saddle.yaml", "utf8");
const words = ({bytes}) => new TextDecoder().decode(bytes);

const faces = ["truetype/osifont/osifont.ttf", "truetype/dejavu/DejaVuSans.ttf"];
const files = new Map([
  ...within("profiles", /\.yaml$/).map((path) => [path, readFileSync(path)]),
  ...faces.map((path) => [`share/fonts/${path}`, readFileSync(`/usr/share/fonts/${path}`)]),
]);
const compiled = new WebAssembly.Module(readFileSync("build/anywhere/sillet.wasm"));
const machine = new Machine(compiled, files);

let figures = 0;

// Two results: the same keys, the same words, and every figure to 1e-6.
function compare(got, wanted, at) {
  if (typeof wanted === "number" && typeof got === "number") {
    figures++;
    if (!(Math.abs(got - wanted) <= 1e-6)) check(false, `${at}: ${got}, natively ${wanted}`);
  } else if (wanted && got && typeof wanted === "object" && typeof got === "object") {
    if (Object.keys(got).join() !== Object.keys(wanted).join()) check(false, `${at}: other keys`);
    for (const key of Object.keys(wanted)) compare(got[key], wanted[key], `${at}.${key}`);
  } else if (got !== wanted) check(false, `${at}: ${got}, natively ${wanted}`);
}

// Beside an example may lie a shop file, or a profile of its own, which the module has no folder for.
const alone = (path) => !/^profile: .*\.yaml/m.test(readFileSync(path, "utf8"));

async function plans() {
  const paths = [...within("examples", /\.yaml$/), ...within("tests/sheets", /^good-.*\.yaml$/)].filter(alone);
  for (const path of paths) {
    for (const units of ["mm", "in"]) {
      const answer = await machine.ask("POST", `/plan?units=${units}`, readFileSync(path, "utf8"));
      same(answer.status, 200, `${path}, ${units}`);
      if (answer.status === 200) compare(JSON.parse(words(answer)), JSON.parse(native("plan", "--json", "--units", units, path)), `${path}, ${units}`);
    }
  }
  check(figures > 10000, `figures compared: ${figures}`);
}

// What libharu says of itself differs by Debian's patch, and where things stand in the file with it.
function laidOpen(bytes) {
  const path = join(folder, "laid-open.pdf");
  writeFileSync(path, bytes);
  const text = execFileSync("qpdf", ["--qdf", "--object-streams=disable", path, "-"], {maxBuffer: 1 << 26}).toString("latin1");
  return text.slice(0, text.lastIndexOf("\nxref\n")).replace(/\/Producer \(Haru Free PDF Library 2\.3\.0\w*\)/, "");
}

// A solid's faces may be cut into other triangles where two cuts are equally good: the body is the same if it has as many,
// reaches as far each way and encloses as much. Figures stand in four bytes each, a triangle's after its normal, and two bytes
// between triangles.
function body(bytes) {
  const reach = [Infinity, Infinity, Infinity, -Infinity, -Infinity, -Infinity];
  let volume = 0;
  for (let at = 84; at < bytes.length; at += 50) {
    const [a, b, c] = [12, 24, 36].map((from) => [0, 4, 8].map((k) => bytes.readFloatLE(at + from + k)));
    for (const point of [a, b, c]) point.forEach((value, k) => { reach[k] = Math.min(reach[k], value); reach[k + 3] = Math.max(reach[k + 3], value); });
    volume += (a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) + a[2] * (b[0] * c[1] - b[1] * c[0])) / 6;
  }
  return [...reach, volume];
}

// A last bit is 4e-6 mm where a part is longest.
function sameSolid(got, wanted) {
  if (got.length !== wanted.length || !got.subarray(0, 84).equals(wanted.subarray(0, 84))) return false;
  const ours = body(got), theirs = body(wanted);
  return theirs[6] > 1 && ours.every((value, k) => Math.abs(value - theirs[k]) <= (k < 6 ? 1e-5 : 1e-5 * theirs[6]));
}

const sameDrawing = {
  svg: (got, wanted) => got.equals(wanted),
  dxf: (got, wanted) => got.equals(wanted),
  stl: sameSolid,
  pdf: (got, wanted) => laidOpen(got) === laidOpen(wanted),
};

async function drawings() {
  for (const path of within("examples", /\.yaml$/).filter(alone).slice(0, 8)) {
    for (const ending of ["svg", "dxf", "stl", "pdf"]) {
      const answer = await machine.ask("POST", `/draw?as=${ending}`, readFileSync(path, "utf8"));
      const byHand = join(folder, `native.${ending}`);
      const {status} = spawnSync("build/sillet", ["draw", path, "-o", byHand], {env: environment});
      same(answer.status, status === 0 ? 200 : 404, `${path} as ${ending}`);
      if (status === 0) check(sameDrawing[ending](Buffer.from(answer.bytes), readFileSync(byHand)), `${path} as ${ending} is another drawing`);
    }
  }
}

async function complaints() {
  const wrong = await machine.ask("POST", "/plan", "sillet: 1\nprofile: ukulele\nunits: ells\n");
  same([wrong.status, JSON.parse(words(wrong)).complaints[0].line], [422, 3], "a wrong sheet is told by its line");
  const near = await machine.ask("POST", "/read", "sillet: 1\nprofile: ukelele\n");
  check(words(near).includes("did you mean ukulele?"), "the folder of profiles is looked through");
  for (const path of ["/etc/passwd", "../profiles/ukulele.yaml", "ukulele.yaml", "shop.yaml"]) {
    const asked = await machine.ask("POST", "/read", `sillet: 1\nprofile: ${path}\n`);
    check(words(asked).includes("there is no folder of sheets to read a file from"), `${path} is not read`);
  }
  const garbage = Uint8Array.from({length: 4000}, (_, k) => (k * 7919) % 251);
  same((await machine.ask("POST", "/plan", new TextDecoder("latin1").decode(garbage))).status, 422, "what is no sheet");
  same((await machine.ask("POST", "/plan", "x".repeat(10 << 20))).status, 413, "10 MB");
  same((await machine.ask("GET", "/sheets", "")).status, 404, "there is no folder");
  same((await machine.ask("GET", "/plan", "")).status, 405, "another method");
}

// The module asks for little, and has no way out of itself.
function imports() {
  const asked = WebAssembly.Module.imports(compiled);
  check(asked.length > 0 && asked.every(({module, name}) => module === "wasi_snapshot_preview1" && !/^sock_|^path_(create|remove|rename|unlink|symlink|link)/.test(name)),
    `asks the system for ${asked.map(({name}) => name).join(" ")}`);
}

// After a stop, and once its memory has grown too far, another takes its place, and answers the same.
async function startedAgain() {
  const own = new Machine(compiled, files);
  const before = words(await own.ask("POST", "/plan", yaml));
  let stopped = false;
  await own.ask("POST", "/plan", "x".repeat(140 << 20)).catch(() => { stopped = true; });
  check(stopped, "a request without room for it stops the module");
  same([words(await own.ask("POST", "/plan", yaml)) === before, own.started], [true, 2], "then another answers");
  await own.ask("POST", "/plan", "x".repeat(50 << 20));
  same([words(await own.ask("POST", "/plan", yaml)) === before, own.started], [true, 3], "and after one that took 50 MB");
  for (let k = 0; k < 20; k++) await own.ask("POST", "/draw?as=pdf", yaml);
  same(own.started, 3, "20 packs need no other: what they took is given back");
  const blind = new Machine(compiled, new Map([...files].filter(([path]) => path.startsWith("profiles/"))));
  const {status, bytes} = await blind.ask("POST", "/draw?as=pdf", yaml);
  same([status, words({bytes}).startsWith("no lettering found")], [500, true], "without faces it says so");
}

await plans();
await drawings();
await complaints();
imports();
await startedAgain();
rmSync(folder, {recursive: true});
report();
