// SPDX-License-Identifier: MIT
// What the page carries with it: files, one after the other, deflated and in base64. The list of their names and sizes stands
// before them, as the element's own.

async function unpack(id) {
  const element = document.getElementById(id);
  const letters = atob(element.textContent);
  const packed = Uint8Array.from(letters, (letter) => letter.charCodeAt(0));
  const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream("deflate-raw"));
  const bytes = new Uint8Array(await new Response(stream).arrayBuffer());
  const names = new Map();
  let at = 0;
  for (const [name, size] of JSON.parse(element.dataset.files)) {
    names.set(name, bytes.subarray(at, at + size));
    at += size;
  }
  element.remove();
  return names;
}

export const program = unpack("carried-program").then((all) => WebAssembly.compile(all.get("sillet.wasm")));
export const files = unpack("carried-files");
export const notices = () => (kept ??= unpack("carried-notices"));

let kept;
