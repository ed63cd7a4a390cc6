// What limits a look: its current, how often it flashes, and whether it can be told from others. Always in view.

import { setText } from "./dom.js";
import { flashes } from "./look_edit.js";
import { mistakeWords } from "./mistakes.js";
import { describe } from "./sentence.js";
import { percent } from "./values.js";
import { LOCALE, say } from "./words.js";

const EITHER = new Intl.ListFormat(LOCALE, { type: "disjunction" });
const byId = (id) => document.getElementById(id);

export class Meters {
  #alike = null;

  /** What was found of a look. One that cannot be drawn has no figures, and one that has just been begun is not called empty. */
  tell({ mistakes, current, flashes: found }, look) {
    if (current === undefined) {
      meter("current", "–", 0, "");
      meter("flashes", "–", 0, "");
    } else {
      meter("current", say("bench.meter.current.of", { peak: current.peak_mA, ceiling: current.ceiling_mA }), current.peak_mA / current.ceiling_mA, current.dimmed_share > 0 ? "care" : "");
      meter("flashes", say("bench.meter.flashes.of", { most: found.most, limit: found.limit }), found.most / found.limit, found.most > found.limit ? "over" : "");
    }
    const care = flashes(look) ? [say("look.warning")] : [];
    setText(byId("meter-words"), [...care, ...wrongWords(look.layers.length === 0 ? [] : mistakes, look), ...dimmedWords(current), ...this.#alikeWords()].join(" "));
  }

  /** It could not be found out, for a reason in words. */
  fail(words) {
    meter("current", "–", 0, "");
    meter("flashes", "–", 0, "");
    setText(byId("meter-words"), words);
  }

  /** Which states look like those of this look, and to whom; null while that is being found out, undefined if it could not be. */
  tellAlike(alike) {
    this.#alike = alike;
    const others = [...new Set((alike ?? []).map(({ other }) => other))];
    const words = alike === null ? say("bench.meter.alike.wait") : alike === undefined ? "–" : others.length === 0 ? say("bench.meter.alike.none") : say("bench.meter.alike.some", { count: others.length });
    meter("alike", words, others.length === 0 ? 0 : 1, others.length === 0 ? "" : "care");
  }

  #alikeWords() {
    return (this.#alike ?? []).map(({ state, other, to }) => say("bench.alike", {
      state: say(`state.${state}`), other: say(`state.${other}`), who: EITHER.format(to.map((sight) => say(`bench.sight.${sight}`))),
    }));
  }
}

/** One line for each thing for which a look would be refused. */
function wrongWords(mistakes, look) {
  return mistakes.map((mistake) => {
    const layer = look.layers[mistake.layer];
    return say("bench.wrong", { layer: layer === undefined ? say("bench.wrong.look") : describe(layer), what: mistakeWords(mistake) });
  });
}

function dimmedWords(current) {
  return current !== undefined && current.dimmed_share > 0 ? [say("bench.meter.dimmed", { share: percent(current.dimmed_share), asked: current.asked_mA })] : [];
}

function meter(name, words, share, mark) {
  const box = byId(`meter-${name}`);
  setText(box.querySelector(".value"), words);
  box.querySelector(".level span").style.width = `${100 * Math.min(1, share)}%`;
  box.dataset.mark = mark;
}
