// The words of the bench, in all languages of the page.

import { BENCH_CHINESE } from "./bench_chinese.js";
import { BENCH_ENGLISH } from "./bench_english.js";
import { BENCH_FRENCH } from "./bench_french.js";
import { BENCH_GERMAN } from "./bench_german.js";
import { BENCH_SPANISH } from "./bench_spanish.js";

export const LOOK_TABLES = { en: BENCH_ENGLISH, de: BENCH_GERMAN, es: BENCH_SPANISH, fr: BENCH_FRENCH, zh: BENCH_CHINESE };
