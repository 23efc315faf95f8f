// SPDX-License-Identifier: MIT
// How a question reaches the program: to the server this page came from. The page that is one file has
// another file in place of this one.

export const send = (method, path, body, headers) => fetch(path, {method, body, headers});

export const unanswered = "The program behind this page has ended. What you wrote is kept here. Start sillet serve again: the page goes on by itself.";
