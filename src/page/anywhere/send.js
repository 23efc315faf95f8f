// SPDX-License-Identifier: MIT
// How a question reaches the program where it is in the page itself.
import {files, program} from "./carried.js";
import * as drafts from "./drafts.js";
import {Machine} from "./machine.js";

const machine = Promise.all([program, files]).then(([compiled, all]) => new Machine(compiled, all));

// A sheet names an instrument's own file by its path on a disk. Here the files lie in no folders, so the last name of it
// is asked for, and the answer has the path again.
const byPath = /^(profile: *["']?)((?:[^\s"'#]*\/)([^\s"'/#]+\.yaml))/m;

function answered(text, path, said, name) {
  if (path !== "/read" || !said) return text;
  const answer = JSON.parse(text);
  for (const entry of answer.entries) if (entry[0] === "profile" && entry[1] === name && entry.length === 2) entry[1] = said;
  return JSON.stringify(answer);
}

// One that stopped may have been out of memory, which the next has again; so it is asked once more.
export async function send(method, path, body = "") {
  const one = await machine;
  const [, , said, name] = body.match(byPath) || [];
  const asked = said ? body.replace(byPath, `$1$3`) : body;
  one.give([...drafts.files()].map(([file, text]) => [file, text.replace(byPath, `$1$3`)]));
  const {status, type, bytes} = await one.ask(method, path, asked).catch(() => one.ask(method, path, asked));
  // As fetch gives it, but there at once: a Response would read it in a few turns of the browser's own.
  const words = () => answered(new TextDecoder().decode(bytes), path, said, name);
  return {status, headers: new Map([["Content-Type", type]]), text: async () => words(), json: async () => JSON.parse(words()), blob: async () => new Blob([bytes], {type})};
}

export const unanswered = "The program in this page stopped at this sheet. What you wrote is kept; the page starts it again by itself.";
