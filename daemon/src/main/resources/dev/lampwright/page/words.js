// The words of the page, in the first of the viewer's languages that there is a table for.

/** The file of each table: only the one in use is loaded. */
const FILES = { en: "english.js", de: "german.js", es: "spanish.js", fr: "french.js", zh: "chinese.js" };
const languageOf = (tag) => tag.toLowerCase().split("-")[0];

/** How numbers and times are written: the viewer's own variety of the language. */
export const LOCALE = navigator.languages.find((tag) => Object.hasOwn(FILES, languageOf(tag))) ?? "en-GB";
const LANGUAGE = languageOf(LOCALE);
const TABLE = {};
const PLURALS = new Intl.PluralRules(LOCALE);
const NUMBERS = new Intl.NumberFormat(LOCALE, { maximumFractionDigits: 9 });

await learn(FILES);

/** Takes up the texts of the viewer's language, from that of the files by language which has them. */
export async function learn(files) {
  Object.assign(TABLE, (await import(`./${files[LANGUAGE]}`)).TABLE);
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
