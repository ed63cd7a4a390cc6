// Ten seconds of a look that is on the page alone, played over and over.

import { setText } from "./dom.js";
import { say } from "./words.js";

const byId = (id) => document.getElementById(id);

export class Film {
  #show;
  #frames = [];
  #step = 50;
  #at = 0;
  #timer = 0;

  /** show is called with each frame, and whether it is the first of others than before. */
  constructor(show) {
    this.#show = show;
    byId("play").addEventListener("click", () => this.#run(this.#timer === 0));
    byId("time").addEventListener("input", () => {
      this.#run(false);
      this.#seek(Number(byId("time").value));
    });
    this.#run(true);
  }

  /** Goes on with other frames, as a preview has them. */
  load(preview) {
    this.#frames = framesOf(preview);
    this.#step = 1000 / preview.rate;
    byId("time").max = this.#frames.length - 1;
    this.#seek(Math.min(this.#at, this.#frames.length - 1), true);
    this.#run(this.#timer !== 0);
  }

  /** A look that has nothing in it yet. */
  dark(pixels) {
    this.#frames = [{ strip: new Uint8Array(3 * pixels), duties: [] }];
    this.#seek(0, true);
  }

  #run(running) {
    clearInterval(this.#timer);
    this.#timer = running ? setInterval(() => document.hidden || this.#seek((this.#at + 1) % Math.max(1, this.#frames.length)), this.#step) : 0;
    byId("play").setAttribute("aria-pressed", running);
  }

  #seek(at, isNew = false) {
    this.#at = at;
    byId("time").value = at;
    const words = say("bench.time", { seconds: (at * this.#step / 1000).toFixed(1) });
    byId("time").setAttribute("aria-valuetext", words);
    setText(byId("time-words"), words);
    if (this.#frames[at] !== undefined) {
      this.#show(this.#frames[at], isNew);
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
