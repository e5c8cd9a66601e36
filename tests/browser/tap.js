/* Checks one after the other, printed as TAP. A check passes when it does not throw. */
"use strict";

let number = 0, failed = 0;

async function check(name, body) {
  number += 1;
  try {
    await body();
    console.log(`ok ${number} - ${name}`);
  } catch (error) {
    failed += 1;
    console.log(`not ok ${number} - ${name}`);
    console.log(String(error.stack || error).split("\n").slice(0, 12).map((line) => `  ${line}`).join("\n"));
  }
}

function finish() {
  console.log(`1..${number}`);
  process.exitCode = failed ? 1 : 0;
}

module.exports = { check, finish };
