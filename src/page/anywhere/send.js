// SPDX-License-Identifier: MIT
// How a question reaches the program where it is in the page itself.
import {Machine} from "./machine.js";
import {files, program} from "./carried.js";

const machine = Promise.all([program, files]).then(([compiled, all]) => new Machine(compiled, all));

export async function send(method, path, body) {
  const {status, type, bytes} = await (await machine).ask(method, path, body);
  return new Response(bytes, {status, headers: {"Content-Type": type}});
}

export const unanswered = "The program in this page stopped and is set going again. What you wrote is kept; change a figure to go on.";
