// What is wrong with a look or a cue, in words: by the code of the mistake, or as the daemon says it if the language has no text for that.

import { keyWords } from "./fields.js";
import { signalWords } from "./sentence.js";
import { isSaid, say } from "./words.js";

/** Codes that one text is for. */
const SAME = { flashes_together: "flashes_several" };

/** A mistake as a sentence. One that is in another look says where. */
export function mistakeWords({ code = "", values = {}, key = "", what, instead, elsewhere = false }) {
  const text = `wrong.${SAME[code] ?? code}`;
  if (elsewhere || !isSaid(text)) {
    return `${what}; ${instead}`;
  }
  const { other, signal, near = "" } = values;
  const named = { ...values, key: keyWords(key), other: other && keyWords(other), signal: signal && signalWords(signal) };
  return `${say(text, named)}${near === "" ? "" : say("wrong.near", { near })}`;
}

/** A mistake with the name of the key that it is in. */
export function mistakeAt(mistake) {
  const { key = "" } = mistake;
  return key === "" ? mistakeWords(mistake) : say("bench.wrong.at", { key: keyWords(key), what: mistakeWords(mistake) });
}
