// The words of the fitting, in all languages of the page.

import { FIT_CHINESE } from "./fit_chinese.js";
import { FIT_ENGLISH } from "./fit_english.js";
import { FIT_FRENCH } from "./fit_french.js";
import { FIT_GERMAN } from "./fit_german.js";
import { FIT_SPANISH } from "./fit_spanish.js";

export const FIT_TABLES = { en: FIT_ENGLISH, de: FIT_GERMAN, es: FIT_SPANISH, fr: FIT_FRENCH, zh: FIT_CHINESE };
