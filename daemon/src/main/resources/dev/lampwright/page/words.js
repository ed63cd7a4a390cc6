// The words of the page, in the first of the viewer's languages that there is a table for.

import { CHINESE } from "./chinese.js";
import { ENGLISH } from "./english.js";
import { FRENCH } from "./french.js";
import { GERMAN } from "./german.js";
import { SPANISH } from "./spanish.js";

const TABLES = { en: ENGLISH, de: GERMAN, es: SPANISH, fr: FRENCH, zh: CHINESE };
const languageOf = (tag) => tag.toLowerCase().split("-")[0];

/** How numbers and times are written: the viewer's own variety of the language. */
export const LOCALE = navigator.languages.find((tag) => Object.hasOwn(TABLES, languageOf(tag))) ?? "en-GB";
const LANGUAGE = languageOf(LOCALE);
const TABLE = TABLES[LANGUAGE];
const PLURALS = new Intl.PluralRules(LOCALE);
const NUMBERS = new Intl.NumberFormat(LOCALE, { maximumFractionDigits: 9 });

/** Takes up texts that one page alone has, in tables by language. */
export function learn(tables) {
  Object.assign(TABLE, tables[LANGUAGE]);
}

/** The text of a code, with its values put in. A code without a text is shown itself, so that nothing is lost. */
export function say(code, values = {}) {
  const text = TABLE[code] ?? code;
  const form = typeof text === "string" ? text : text[PLURALS.select(values.count)] ?? text.other;
  return form.replace(/\{(\w+)\}/g, (_, name) => said(values[name] ?? ""));
}

function said(value) {
  return typeof value === "number" ? NUMBERS.format(value) : value;
}

/** Whether there is a text for a code. */
export function isSaid(code) {
  return Object.hasOwn(TABLE, code);
}

/** Why an ask was refused, by its code and values; the daemon's own English if the language has no text for it. */
export function reason({ code, values, why }) {
  return isSaid(`why.${code}`) ? say(`why.${code}`, values) : why;
}

/** Puts texts where the page has their codes: as content by data-say, as a name for those who listen by data-label. */
export function fill(root) {
  root.documentElement.lang = LANGUAGE === "zh" ? "zh-Hans" : LANGUAGE;
  root.querySelectorAll("[data-say]").forEach((element) => {
    element.textContent = say(element.dataset.say);
  });
  root.querySelectorAll("[data-label]").forEach((element) => {
    element.setAttribute("aria-label", say(element.dataset.label));
  });
}
