// SPDX-License-Identifier: MIT
// What passed and what failed, told at the end.

let passed = 0;
let failed = 0;

export function check(good, what) {
  if (good) passed++;
  else {
    failed++;
    console.log(`failed: ${what}`);
  }
}

export const same = (got, wanted, what) =>
  check(JSON.stringify(got) === JSON.stringify(wanted), `${what}\n  wanted ${JSON.stringify(wanted)}\n  got    ${JSON.stringify(got)}`);

export function report() {
  console.log(`${passed} passed, ${failed} failed`);
  process.exit(failed ? 1 : 0);
}
