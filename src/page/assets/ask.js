// SPDX-License-Identifier: MIT
// The one way in which this page asks its program. Where that does not answer, it is said as long as it lasts.
import {by} from "./dom.js";
import {send, unanswered} from "./send.js";

export class Unanswered extends Error {}

// What a person set going: where it ended for want of an answer, that has been said.
export const asking = (work) => async (...given) => {
  try {
    return await work(...given);
  } catch (error) {
    if (!(error instanceof Unanswered)) throw error;
    return null;
  }
};

export async function ask(method, path, body, headers = {}) {
  const reply = await send(method, path, body, headers).catch(() => {
    if (by("gone").textContent !== unanswered) by("gone").textContent = unanswered;
    throw new Unanswered(unanswered);
  });
  if (by("gone").textContent) by("gone").textContent = "";
  const json = (reply.headers.get("Content-Type") || "").startsWith("application/json");
  return {status: reply.status, tag: reply.headers.get("ETag"),
          body: json ? await reply.json() : null, reply};
}
