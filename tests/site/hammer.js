/* Reads pages of a site over and over, as many readers would, until told to stop (a line on
 * standard input), and counts what no reader should see. Every page bears the edition in its title
 * and in its footer: "Edition 7" twice, or the page is mixed.
 *   node hammer.js ADDRESS PATH...   prints {"asked", "missing", "mixed", "editions"} */
"use strict";
const http = require("node:http");

const [address, ...paths] = process.argv.slice(2);
const agent = new http.Agent({ keepAlive: true, maxSockets: 4 });
const seen = { asked: 0, missing: 0, mixed: 0, editions: new Set() };
let going = true;

function get(path) {
  return new Promise((resolve) => {
    http.get(address + path, { agent }, (response) => {
      let body = "";
      response.setEncoding("utf8");
      response.on("data", (part) => { body += part; });
      response.on("end", () => resolve({ status: response.statusCode, body }));
    }).on("error", () => resolve({ status: 0, body: "" }));
  });
}

async function read(path) {
  const { status, body } = await get(path);
  seen.asked += 1;
  if (status !== 200) {
    seen.missing += 1;
    return;
  }
  const editions = new Set(body.match(/Edition \d+/g));
  if (editions.size !== 1 || !body.trimEnd().endsWith("</html>")) seen.mixed += 1;
  for (const edition of editions) seen.editions.add(edition);
}

async function reader(first) {
  for (let i = first; going; i++) await read(paths[i % paths.length]);
}

process.stdin.on("data", () => { going = false; });
Promise.all([0, 1, 2, 3].map(reader)).then(() => {
  console.log(JSON.stringify({ ...seen, editions: seen.editions.size }));
  process.exit();
});
