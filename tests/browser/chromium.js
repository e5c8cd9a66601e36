/* Debian's Chromium, driven over its own protocol, with nothing that reaches out. */
"use strict";
const { chromium } = require("playwright-core");

const quiet = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
  "--disable-background-networking", "--disable-component-update", "--disable-sync"];

const launch = () => chromium.launch({
  executablePath: process.env.CHROMIUM || "/usr/bin/chromium", headless: true, args: quiet });

module.exports = { launch };
