// SPDX-License-Identifier: MIT
// The one way in which this page asks its program.
import {tell} from "./dom.js";
import {send, unanswered} from "./send.js";

export async function ask(method, path, body, headers = {}) {
  const reply = await send(method, path, body, headers).catch((error) => {
    tell(unanswered);
    throw error;
  });
  const json = (reply.headers.get("Content-Type") || "").startsWith("application/json");
  return {status: reply.status, tag: reply.headers.get("ETag"),
          body: json ? await reply.json() : null, reply};
}
