/* A folder served over loopback, for the tests: GET only, index.html for folders. */
"use strict";
const fs = require("node:fs");
const http = require("node:http");
const path = require("node:path");
const zlib = require("node:zlib");

const types = { ".html": "text/html; charset=utf-8", ".css": "text/css", ".js": "text/javascript",
  ".json": "application/json", ".svg": "image/svg+xml", ".xml": "application/xml",
  ".txt": "text/plain; charset=utf-8", ".jpg": "image/jpeg", ".webp": "image/webp" };
const PACKED = /^(text|application)\/|svg/;

/* What a careful host sends; the pages must live with it. */
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; " +
  "connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

/* What a host does with files to save its readers' time: compressed, and kept for a while. */
function sendAsHost(response, headers, bytes) {
  const packed = PACKED.test(headers["content-type"]);
  response.writeHead(200, { ...headers, "cache-control": "max-age=604800",
    ...packed && { "content-encoding": "gzip" } });
  response.end(packed ? zlib.gzipSync(bytes) : bytes);
}

function answer(folder, asHost, request, response) {
  let file = path.join(folder, path.normalize(decodeURIComponent(request.url.split("?")[0])));
  if (file.endsWith("/")) file += "index.html";
  if (!fs.existsSync(file) || fs.statSync(file).isDirectory()) {
    response.writeHead(404).end();
    return;
  }
  const headers = { "content-type": types[path.extname(file)] || "application/octet-stream",
    "content-security-policy": policy };
  if (asHost) sendAsHost(response, headers, fs.readFileSync(file));
  else response.writeHead(200, headers).end(fs.readFileSync(file));
}

/* Resolves to {address, close} once it listens on a free port. */
function serve(folder, { asHost = false } = {}) {
  const server = http.createServer((request, response) => answer(folder, asHost, request, response));
  return new Promise((resolve) => server.listen(0, "127.0.0.1", () => resolve({
    address: `http://127.0.0.1:${server.address().port}`,
    close: () => server.close(),
  })));
}

module.exports = { serve };
