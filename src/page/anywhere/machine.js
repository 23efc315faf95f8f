// SPDX-License-Identifier: MIT
// The program within the page: set going, asked, and set going again where it stopped. It keeps nothing between two
// questions, so that nothing is lost with it.
import {system} from "./wasi.js";

// A module's memory never shrinks. One that has come to this much is replaced.
const tooLarge = 48 * 1024 * 1024;

const environment = {SILLET_PROFILES: "/profiles", XDG_DATA_DIRS: "/share"};

export class Machine {
  // compiled: a WebAssembly.Module. files: Map of paths to bytes: profiles/NAME.yaml, share/fonts/..
  constructor(compiled, files) {
    Object.assign(this, {compiled, files, given: [], running: null, started: 0});
  }

  // Files of a person's own, [name, text] of each: another program is started where they are others than before.
  give(given) {
    if (given.length === this.given.length && given.every(([name, text], k) => name === this.given[k][0] && text === this.given[k][1])) return;
    this.given = given;
    this.running = null;
  }

  all() {
    const letters = new TextEncoder();
    return new Map([...this.files, ...this.given.map(([name, text]) => [`given/${name}`, letters.encode(text)])]);
  }

  async start() {
    let memory;
    const instance = await WebAssembly.instantiate(this.compiled, system(this.all(), environment, () => memory));
    memory = instance.exports.memory;
    instance.exports._initialize();
    this.started++;
    return instance.exports;
  }

  // {status, type, bytes}. Throws where the program stopped; asked again, another is there.
  async ask(method, target, body = "") {
    this.running ??= this.start();
    const program = await this.running;
    try {
      const answer = put(program, new TextEncoder().encode(`${method}\0${target}\0${body}`));
      if (program.memory.buffer.byteLength > tooLarge) this.running = null;
      return answer;
    } catch (error) {
      this.running = null;
      throw error;
    }
  }
}

function put(program, request) {
  const room = program.module_room(request.length);
  if (room === 0) throw new Error("no memory");
  new Uint8Array(program.memory.buffer, room, request.length).set(request);
  const status = program.module_ask(room, request.length);
  const given = (at, size) => new Uint8Array(program.memory.buffer, at, size).slice();
  const bytes = given(program.module_bytes(), program.module_size());
  return {status, type: text(program, program.module_type()), bytes};
}

function text(program, at) {
  const bytes = new Uint8Array(program.memory.buffer, at);
  return new TextDecoder().decode(bytes.subarray(0, bytes.indexOf(0)));
}
