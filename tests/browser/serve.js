/* A folder served over loopback, for the tests: GET only, index.html for folders. */
"use strict";
const fs = require("node:fs");
const http = require("node:http");
const path = require("node:path");

const types = { ".html": "text/html; charset=utf-8", ".css": "text/css", ".js": "text/javascript",
  ".json": "application/json", ".svg": "image/svg+xml", ".xml": "application/xml" };

/* What a careful host sends; the pages must live with it. */
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; " +
  "connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

function answer(folder, request, response) {
  let file = path.join(folder, path.normalize(decodeURIComponent(request.url.split("?")[0])));
  if (file.endsWith("/")) file += "index.html";
  if (!fs.existsSync(file) || fs.statSync(file).isDirectory()) {
    response.writeHead(404).end();
    return;
  }
  response.writeHead(200, { "content-type": types[path.extname(file)] || "application/octet-stream",
    "content-security-policy": policy });
  response.end(fs.readFileSync(file));
}

/* Resolves to {address, close} once it listens on a free port. */
function serve(folder) {
  const server = http.createServer((request, response) => answer(folder, request, response));
  return new Promise((resolve) => server.listen(0, "127.0.0.1", () => resolve({
    address: `http://127.0.0.1:${server.address().port}`,
    close: () => server.close(),
  })));
}

module.exports = { serve };
