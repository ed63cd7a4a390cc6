// A narrow band of light: pixels side by side, with a glow around them.

import { make } from "./dom.js";
import { glare, linear } from "./light.js";

export class Band {
  #pens;
  #image = new ImageData(1, 1);

  constructor() {
    const canvases = ["glow", "core"].map((name) => make("canvas", { class: name, width: 1, height: 1 }));
    this.#pens = canvases.map((canvas) => canvas.getContext("2d"));
    this.element = make("span", { class: "light", "aria-hidden": "true" }, ...canvases);
  }

  /** Shows bytes of red, green and blue, as frames have them; those of two frames mixed if a share below 1 is of the second. */
  show(colours, from = colours, share = 1) {
    const count = colours.length / 3;
    const before = from.length === colours.length ? from : colours;
    this.#fit(count);
    for (let i = 0; i < count; i++) {
      const light = [0, 1, 2].map((c) => linear(before[3 * i + c]) * (1 - share) + linear(colours[3 * i + c]) * share);
      this.#image.data.set([...glare(light, 0), 255], 4 * i);
    }
    this.#pens.forEach((pen) => pen.putImageData(this.#image, 0, 0));
  }

  #fit(count) {
    if (this.#image.width !== count) {
      this.#image = new ImageData(count, 1);
      this.#pens.forEach(({ canvas }) => {
        canvas.width = count;
      });
    }
  }
}
