// SPDX-License-Identifier: MIT
// The glossary's figures, which are those of the page: node tests/page/glossary.mjs FOLDER
// Each NAME.svg that docs/glossary.md shows is written there, in the colours of the page by day.
import {readFileSync, writeFileSync} from "node:fs";
import {join} from "node:path";
import {fileURLToPath} from "node:url";

const top = join(fileURLToPath(import.meta.url), "..", "..", "..");
const [folder] = process.argv.slice(2);

// As much of a document as a figure needs: elements that can be written out.
class Element {
  constructor(name) { Object.assign(this, {name, properties: [], inside: []}); }
  setAttribute(key, value) { this.properties.push(` ${key}="${value}"`); }
  append(...elements) { this.inside.push(...elements.map((one) => one.text())); }
  set textContent(text) { this.inside.push(text.replace(/&/g, "&amp;").replace(/</g, "&lt;")); }
  text() { return `<${this.name}${this.properties.join("")}>${this.inside.join("")}</${this.name}>`; }
}
globalThis.document = {createElementNS: (space, name) => new Element(name)};
// As a module by its text: Debian's node takes a file for one only if it is called so.
const {draw} = await import(`data:text/javascript,${encodeURIComponent(readFileSync(join(top, "src/page/assets/figure.js"), "utf8"))}`);

// The page's own rules for a figure, with its colours put in.
function style() {
  const css = readFileSync(join(top, "src/page/assets/style.css"), "utf8");
  const colours = new Map([...css.slice(0, css.indexOf("}")).matchAll(/(--\w+): ([^;]+);/g)].map(([, name, value]) => [name, value]));
  return css.split("\n").filter((line) => /^\.where (\.|text)/.test(line)).join(" ").replaceAll(".where ", "")
    .replace(/var\((--\w+)\)/g, (whole, name) => colours.get(name)).replaceAll('"', "'");
}

// A figure as a file of its own: numbers to a hundredth, on paper of its own so that it can be seen on a dark page.
function file(name) {
  const drawn = draw(name).text();
  if (name !== "before" && drawn === draw("before").text()) throw new Error(`the page has no figure ${name}`);
  const [left, up, wide, tall] = drawn.match(/viewBox="([^"]+)"/)[1].split(" ");
  const inside = drawn.slice(drawn.indexOf(">") + 1).replace(/\d+\.\d{3,}/g, (number) => String(Math.round(number * 100) / 100));
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${left} ${up} ${wide} ${tall}" width="${wide}" height="${tall}"><style>${style()}</style>` +
    `<rect class="paper" x="${left}" y="${up}" width="${wide}" height="${tall}"/>${inside}\n`;
}

const shown = readFileSync(join(top, "docs/glossary.md"), "utf8").matchAll(/\(pictures\/readings\/([\w-]+)\.svg\)/g);
for (const name of new Set([...shown].map((one) => one[1]))) writeFileSync(join(folder, `${name}.svg`), file(name));
