/* Which English words of the program stand where another language is wanted. */
"use strict";
const fs = require("node:fs");
const path = require("node:path");

const top = path.resolve(__dirname, "../..");
const read = (name) => fs.readFileSync(path.join(top, name), "utf8");
const wordsIn = (text) => (text.match(/[A-Za-z\u00c0-\u024f][A-Za-z\u00c0-\u024f']+/g) || [])
  .map((word) => word.toLowerCase());

const themeWords = (tag) => ["plain", "paper"].flatMap((theme) =>
  Object.values(JSON.parse(read(`themes/${theme}/words-${tag}.json`))));

/* What a language's file says, without its keys, places and remarks. */
const sentences = (tag) => read(`src/reference/language-${tag}.yaml`).split("\n")
  .filter((line) => !/^\s*#/.test(line) && !/^(plural-rules|numbers):/.test(line))
  .flatMap((line) => line.replace(/\s#.*/, "").replace(/\{[a-z-]+\}/g, " ").split(/[{,]/))
  .map((part) => part.replace(/^\s*[a-z][^:"]*:(\s|$)/i, ""));

const ofProgram = (tag) => new Set([...themeWords(tag), ...sentences(tag)].flatMap(wordsIn));

const filesIn = (folder) => fs.readdirSync(folder, { withFileTypes: true }).flatMap((entry) =>
  entry.isDirectory() ? filesIn(path.join(folder, entry.name)) : [path.join(folder, entry.name)]);

/* What a site's files say, without their keys and the words that mean something to the program. */
const SAID = /^[\s-]*(name|about|source|title|summary|makes|portion|plural|expect|because|also|remarks|author|by): /;
const ownWords = (folder) => filesIn(folder).filter((file) => /\.(md|yaml)$/.test(file))
  .flatMap((file) => fs.readFileSync(file, "utf8").split("\n"))
  .filter((line) => SAID.test(line) || /^\s*(- )?\d|^[A-ZÄÖÜ]|^- [A-ZÄÖÜ]/.test(line))
  .map((line) => line.replace(SAID, ""));

/* The English words of program and themes that neither the other language nor the site in `folder`
 * has itself. */
function englishBeside(tag, folder) {
  const others = new Set([...ofProgram(tag), ...ownWords(folder).flatMap(wordsIn)]);
  return new Set([...ofProgram("en")].filter((word) => !others.has(word)));
}

const decoded = (text) => text.replace(/&lt;/g, "<").replace(/&gt;/g, ">").replace(/&quot;/g, '"')
  .replace(/&#39;/g, "'").replace(/&amp;/g, "&");

/* What a page says to who reads or hears it: its text, labels, and what its scripts say. */
function textsOf(html) {
  const seen = html.replace(/<(script|style)[\s\S]*?<\/\1>/g, "").replace(/<meta name="viewport"[^>]*>/, "");
  const labels = [...seen.matchAll(/\s(?:alt|title|aria-label|content)="([^"]*)"/g)];
  const forScripts = [...seen.matchAll(/\sdata-(?!recipe)[a-z-]+="([^"]*[\s:][^"]*)"/g)];
  const said = [...labels, ...forScripts].map((found) => found[1]);
  return [...seen.split(/<[^>]*>/), ...said].map(decoded).map((text) => text.trim())
    .filter((text) => text && !/^https?:/.test(text));
}

/* "the: 4 Eier, the weight" for each text that has a word of `unwanted`. */
const foundIn = (texts, unwanted) => texts.flatMap((text) => wordsIn(text)
  .filter((word) => unwanted.has(word)).map((word) => `${word}: ${text.slice(0, 90)}`));

module.exports = { englishBeside, filesIn, textsOf, foundIn };
