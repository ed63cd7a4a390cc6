// Which files have the words of the bench, by language.

export const BENCH_WORDS = { en: "bench_english.js", de: "bench_german.js", es: "bench_spanish.js", fr: "bench_french.js", zh: "bench_chinese.js" };
