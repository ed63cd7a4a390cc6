// Ten seconds of a look that is on the page alone, played over and over; or a recording, ten seconds after ten seconds.

import { setText } from "./dom.js";
import { duration } from "./values.js";
import { LOCALE, say } from "./words.js";

const byId = (id) => document.getElementById(id);
/** How many steps the slider has for a recording. */
const STEPS = 200;
const TENTHS = new Intl.NumberFormat(LOCALE, { minimumFractionDigits: 1, maximumFractionDigits: 1 });

export class Film {
  #show;
  #more;
  #frames = [];
  #shown = [];
  #step = 50;
  #at = 0;
  #timer = 0;
  #part = null;
  #waits = false;

  /**
   * show is called with each frame, whether it is the first of others than before, and what the printer does in it; more with the second of a
   * recording from which frames are needed.
   */
  constructor(show, more) {
    this.#show = show;
    this.#more = more;
    byId("play").addEventListener("click", () => this.#run(this.#timer === 0));
    byId("time").addEventListener("input", () => {
      this.#run(false);
      this.#goTo(Number(byId("time").value));
    });
    this.#run(true);
  }

  /**
   * Goes on with other frames, as a preview has them. Those of a recording are a part of it: from which second on, how many seconds of it one
   * second shows, how long it is, and whether it starts over.
   */
  load(preview, part = null) {
    const begins = part !== null && (this.#waits || part.at_s !== this.#part?.at_s || part.speed !== this.#part.speed);
    this.#frames = framesOf(preview);
    this.#shown = preview.shown ?? [];
    this.#step = 1000 / preview.rate;
    this.#part = part;
    this.#waits = false;
    byId("time").max = part === null ? this.#frames.length - 1 : part.seconds;
    byId("time").step = part === null ? 1 : part.seconds / STEPS;
    this.#seek(begins ? 0 : Math.min(this.#at, this.#frames.length - 1), true);
    this.#run(this.#timer !== 0);
  }

  /** A look that has nothing in it yet. */
  dark(pixels) {
    this.#frames = [{ strip: new Uint8Array(3 * pixels), duties: [] }];
    this.#shown = [];
    this.#part = null;
    this.#waits = false;
    this.#seek(0, true);
  }

  #run(running) {
    clearInterval(this.#timer);
    this.#timer = running ? setInterval(() => document.hidden || this.#go(), this.#step) : 0;
    byId("play").setAttribute("aria-pressed", running);
  }

  #go() {
    if (this.#at + 1 < this.#frames.length) {
      this.#seek(this.#at + 1);
    } else if (this.#part === null) {
      this.#seek(0);
    } else if (!this.#waits) {
      this.#end();
    }
  }

  /** The part is over: the next one, or the first again. */
  #end() {
    const next = this.#secondAt(this.#frames.length);
    if (next < this.#part.seconds - 1e-6) {
      this.#ask(next);
    } else if (this.#part.loop) {
      this.#ask(0);
    } else {
      this.#run(false);
    }
  }

  #ask(second) {
    this.#waits = true;
    this.#more(second);
  }

  /** To where the slider stands: a frame, or a second of a recording. */
  #goTo(value) {
    if (this.#part === null) {
      this.#seek(value);
      return;
    }
    const at = Math.round((value - this.#part.at_s) / this.#part.speed * 1000 / this.#step);
    if (at >= 0 && at < this.#frames.length) {
      this.#seek(at);
    } else {
      this.#ask(Math.min(value, this.#part.seconds));
    }
  }

  #secondAt(frame) {
    return this.#part === null ? frame * this.#step / 1000 : this.#part.at_s + frame * this.#step / 1000 * this.#part.speed;
  }

  #seek(at, isNew = false) {
    this.#at = at;
    const second = this.#secondAt(at);
    byId("time").value = this.#part === null ? at : second;
    const words = this.#part === null ? say("bench.time", { seconds: TENTHS.format(second) }) : duration(second);
    byId("time").setAttribute("aria-valuetext", words);
    setText(byId("time-words"), words);
    if (this.#frames[at] !== undefined) {
      this.#show(this.#frames[at], isNew, this.#shown.findLast(({ frame }) => frame <= at));
    }
  }
}

/** The frames of a preview, each with the bytes of the strip and the dimmers' shares. */
export function framesOf({ strip, frames, pixels, duties }) {
  const bytes = Uint8Array.from(atob(strip), (character) => character.charCodeAt(0));
  return Array.from({ length: frames }, (_, i) => ({ strip: bytes.subarray(3 * pixels * i, 3 * pixels * (i + 1)), duties: duties?.[i] ?? [] }));
}

/** The frame in which a layer is brightest, so that one that flashes is seen without its flashing. */
export function brightest(frames) {
  const light = frames.map(({ strip }) => strip.reduce((sum, value) => sum + value, 0));
  return frames[light.indexOf(Math.max(...light))];
}

/** How bright each frame gets and in which colour, in a row: a picture of a rhythm. */
export function inTime(frames) {
  return Uint8Array.from(frames.flatMap(({ strip }) => {
    let most = 0;
    for (let i = 0; i < strip.length; i += 3) {
      most = strip[i] + strip[i + 1] + strip[i + 2] > strip[most] + strip[most + 1] + strip[most + 2] ? i : most;
    }
    return [...strip.subarray(most, most + 3)];
  }));
}
