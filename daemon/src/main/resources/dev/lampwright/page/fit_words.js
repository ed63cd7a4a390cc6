// Which files have the words of the fitting, by language.

export const FIT_WORDS = { en: "fit_english.js", de: "fit_german.js", es: "fit_spanish.js", fr: "fit_french.js", zh: "fit_chinese.js" };
