#!/usr/bin/env node
/* What a first answer of the search costs on a built site: bytes fetched after the page has loaded
 * (as a web server compresses them, and as they are), and the time from the last letter to the list,
 * in Chromium over loopback; each question in a fresh browser profile.
 *
 *     tests/bench/search.js FOLDER     (a built site, or what search_site writes of a large one;
 *                                       the npm packages of tests/browser are set up) */
"use strict";
const fs = require("node:fs");
const http = require("node:http");
const path = require("node:path");
const zlib = require("node:zlib");
const { launch } = require("../browser/chromium.js");

const types = { ".html": "text/html", ".css": "text/css", ".js": "text/javascript", ".json": "application/json", ".svg": "image/svg+xml" };
const folder = process.argv[2];
let plain = 0, sent = 0, asked = 0;
const server = http.createServer((request, response) => {
  let file = path.join(folder, path.normalize(decodeURIComponent(request.url.split("?")[0])));
  if (file.endsWith("/")) file += "index.html";
  if (!fs.existsSync(file)) return response.writeHead(404).end();
  const bytes = fs.readFileSync(file), packed = zlib.gzipSync(bytes);
  plain += bytes.length;
  sent += packed.length;
  asked++;
  response.writeHead(200, { "content-encoding": "gzip",
    "content-type": types[path.extname(file)] || "application/octet-stream" }).end(packed);
});

/* What is asked: the field that is filled in last, and how the address begins. */
const questions = [
  ["a word of few recipes", "#words", "slipway"],
  ["an ingredient in many", "#words", "oat flour"],
  ["two words", "#words", "golden brownie"],
  ["a beginning", "#words", "gri"],
  ["two letters", "#words", "br"],
  ["a slip of the finger", "#words", "brwonie"],
  ["a number", "#words", "77"],
  ["what one owns", "#own", "whey protein isolate"],
  ["what one owns, by another name", "#own", "oatmeal flour"],
  ["what one owns, and a word", "#words", "golden", "?own=whey+protein+isolate"],
  ["a filter alone", "#protein", "20"],
  ["a filter that is counted", "#kind", "brownie", "", true],
];

/* Resolves to the milliseconds until something is listed. */
function answer([at, text]) {
  const list = document.querySelector("#found"), input = document.querySelector(at);
  return new Promise((resolve) => {
    const from = performance.now();
    new MutationObserver(() => {
      if (list.children.length) requestAnimationFrame(() => resolve(performance.now() - from));
    }).observe(list, { childList: true });
    list.replaceChildren();
    input.value = text;
    if (at === "#own") document.querySelector("[data-add]").click();
    else input.dispatchEvent(new Event("input", { bubbles: true }));
  });
}

async function ask(browser, address, [name, field, words, query = "", open = false]) {
  const context = await browser.newContext(), tab = await context.newPage();
  plain = sent = asked = 0;
  await tab.goto(address + query, { waitUntil: "networkidle" });
  await tab.locator(".search-form").waitFor();
  if (open) {
    await tab.locator(".search-form summary").click();
    await tab.waitForLoadState("networkidle");
  }
  const page = sent;
  plain = sent = asked = 0;
  if (field === "#words") await tab.locator(field).evaluate((input, text) => { input.value = text; }, words.slice(0, -1));
  const took = await tab.evaluate(answer, [field, words]);
  const status = await tab.locator('[role="status"]').innerText();
  console.log(`${name} ("${words}"): ${took.toFixed(0)} ms, ${(sent / 1000).toFixed(1)} kB ` +
    `(${(plain / 1000).toFixed(1)} plain) in ${asked} files after ${(page / 1000).toFixed(1)} kB; ${status}`);
  await context.close();
}

(async () => {
  await new Promise((resolve) => server.listen(0, "127.0.0.1", resolve));
  const browser = await launch();
  for (const question of questions)
    await ask(browser, `http://127.0.0.1:${server.address().port}/search/`, question);
  await browser.close();
  server.close();
})();
