/* How long an edit takes to be told to the pages of a preview, from the write to the event:
 *   node tests/bench/preview.js PROGRAM FOLDER [EDITS]
 * FOLDER is a site folder that may be changed. Prints the median and the longest, in ms, and how
 * much of the median was the wait for quiet. */
"use strict";
const { spawn } = require("node:child_process");
const fs = require("node:fs");
const http = require("node:http");
const path = require("node:path");

const [program, folder, edits = "11"] = process.argv.slice(2);
const agent = new http.Agent({ keepAlive: true });
const QUIET_MS = 30; /* as src/preview/preview.c has it */

function get(url) {
  return new Promise((resolve, reject) => {
    http.get(url, { agent }, (response) => {
      let body = "";
      response.on("data", (part) => { body += part; });
      response.on("end", () => resolve(body));
    }).on("error", reject);
  });
}

const news = async (address, page, token, notices) => JSON.parse(await get(
  `${address}.preview/changes?${new URLSearchParams({ page, token, notices })}`));

async function changed(address, page, before) {
  for (;;) {
    const now = await news(address, page, before.token, before.notices);
    if (now.token !== before.token) return now;
  }
}

async function main() {
  const child = spawn(program, ["preview", folder, "--json", "--port", "0"], { stdio: ["ignore", "pipe", "pipe"] });
  let said = "";
  const built = new Promise((resolve) => child.stderr.on("data", (part) => {
    said += part;
    if (said.includes("built in")) resolve();
  }));
  const address = JSON.parse(await new Promise((resolve) => child.stdout.once("data", resolve))).address;
  await built;
  const file = path.join(folder, "recipes", fs.readdirSync(path.join(folder, "recipes")).sort()[3]);
  const page = `/recipes/${path.basename(file, ".md")}/`, text = fs.readFileSync(file, "utf8"), took = [];
  for (let i = 0; i < Number(edits); i++) {
    const before = await news(address, page, "", "");
    const told = changed(address, page, before);
    await new Promise((resolve) => setTimeout(resolve, 200));
    const begun = process.hrtime.bigint();
    fs.writeFileSync(file, text.replace(/^summary: .*/m, `summary: Edited ${i} times.`));
    await told;
    took.push(Number(process.hrtime.bigint() - begun) / 1e6);
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  fs.writeFileSync(file, text);
  took.sort((a, b) => a - b);
  const median = took[took.length >> 1];
  console.log(`edit to event: median ${median.toFixed(0)} ms (${QUIET_MS} of them quiet), longest ${took.at(-1).toFixed(0)} ms`);
  child.kill("SIGINT");
  child.on("close", () => process.exit(0));
}

main();
