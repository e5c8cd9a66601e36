/* The small German site, two of whose recipes bear names in other scripts, which are their
 * addresses. In the repository files have plain names. */
"use strict";
const fs = require("node:fs");
const path = require("node:path");

const source = path.join(__dirname, "german");
const names = { "dorayaki.md": "抹茶どら焼き.md", "maamoul.md": "معمول-mit-mandeln.md" };

/* Copies the site to the folder `to`, recipes by their names, in the theme `theme`. */
function copyGermanSite(to, theme = "plain") {
  fs.cpSync(source, to, { recursive: true });
  for (const [plain, own] of Object.entries(names))
    fs.renameSync(path.join(to, "recipes", plain), path.join(to, "recipes", own));
  const settings = path.join(to, "site.yaml");
  fs.writeFileSync(settings, fs.readFileSync(settings, "utf8").replace("theme: plain", `theme: ${theme}`));
}

module.exports = { source, copyGermanSite };
