// A narrow band of light: pixels side by side, with a glow around them.

import { make } from "./dom.js";
import { glare, linear } from "./light.js";

export class Band {
  #pens;

  constructor() {
    const canvases = ["glow", "core"].map((name) => make("canvas", { class: name, width: 1, height: 1 }));
    this.#pens = canvases.map((canvas) => canvas.getContext("2d"));
    this.element = make("span", { class: "light", "aria-hidden": "true" }, ...canvases);
  }

  /** Shows bytes of red, green and blue, as frames have them. */
  show(colours) {
    const count = colours.length / 3;
    const image = new ImageData(count, 1);
    for (let i = 0; i < count; i++) {
      image.data.set([...glare([0, 1, 2].map((c) => linear(colours[3 * i + c])), 0), 255], 4 * i);
    }
    for (const pen of this.#pens) {
      pen.canvas.width = count;
      pen.putImageData(image, 0, 0);
    }
  }
}
