// SPDX-License-Identifier: MIT
// How a question reaches the program where it is in the page itself.
import {files, program} from "./carried.js";
import {Machine} from "./machine.js";

const machine = Promise.all([program, files]).then(([compiled, all]) => new Machine(compiled, all));

// One that stopped may have been out of memory, which the next has again; so it is asked once more.
export async function send(method, path, body) {
  const one = await machine;
  const {status, type, bytes} = await one.ask(method, path, body).catch(() => one.ask(method, path, body));
  return new Response(bytes, {status, headers: {"Content-Type": type}});
}

export const unanswered = "The program in this page stopped at this sheet. What you wrote is kept; the page starts it again by itself.";
