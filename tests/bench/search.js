#!/usr/bin/env node
/* What a first answer of the search costs on a built site: bytes fetched after the page has loaded,
 * and the time from the last letter to the list, in Chromium over loopback; each question in a fresh
 * browser profile.
 *
 *     tests/bench/search.js FOLDER     (a built site; the npm packages of tests/browser are set up) */
"use strict";
const fs = require("node:fs");
const http = require("node:http");
const path = require("node:path");
const { launch } = require("../browser/chromium.js");

const types = { ".html": "text/html", ".css": "text/css", ".js": "text/javascript", ".json": "application/json", ".svg": "image/svg+xml" };
const folder = process.argv[2];
let sent = 0, asked = 0;
const server = http.createServer((request, response) => {
  let file = path.join(folder, path.normalize(decodeURIComponent(request.url.split("?")[0])));
  if (file.endsWith("/")) file += "index.html";
  if (!fs.existsSync(file)) return response.writeHead(404).end();
  const bytes = fs.readFileSync(file);
  sent += bytes.length;
  asked++;
  response.writeHead(200, { "content-type": types[path.extname(file)] || "application/octet-stream" }).end(bytes);
});

const questions = [
  ["a word of few recipes", "#words", "slipway"],
  ["an ingredient in many", "#words", "oat flour"],
  ["two words", "#words", "golden brownie"],
  ["a beginning", "#words", "gri"],
  ["a slip of the finger", "#words", "brwonie"],
  ["what one owns", "#own", "whey protein isolate"],
];

(async () => {
  await new Promise((resolve) => server.listen(0, "127.0.0.1", resolve));
  const address = `http://127.0.0.1:${server.address().port}/search/`;
  const browser = await launch();
  for (const [name, field, words] of questions) {
    const context = await browser.newContext();
    const tab = await context.newPage();
    await tab.goto(address, { waitUntil: "networkidle" });
    await tab.locator(".search-form").waitFor();
    const whole = words.slice(0, -1);
    if (field === "#words") await tab.evaluate((text) => { document.querySelector("#words").value = text; }, whole);
    sent = asked = 0;
    const took = await tab.evaluate(([at, text]) => new Promise((resolve) => {
      const list = document.querySelector("#found"), input = document.querySelector(at), from = performance.now();
      new MutationObserver(() => { if (list.children.length) requestAnimationFrame(() => resolve(performance.now() - from)); })
        .observe(list, { childList: true });
      list.replaceChildren();
      input.value = text;
      if (at === "#words") input.dispatchEvent(new Event("input", { bubbles: true }));
      else document.querySelector("[data-add]").click();
    }), [field, words]);
    const status = await tab.locator('[role="status"]').innerText();
    console.log(`${name} ("${words}"): ${took.toFixed(0)} ms, ${(sent / 1000).toFixed(1)} kB in ${asked} files; ${status}`);
    await context.close();
  }
  await browser.close();
  server.close();
})();
