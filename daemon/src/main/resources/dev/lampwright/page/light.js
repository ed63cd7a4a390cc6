// Light as an eye or a camera sees it: everything is added up in linear light, and only then made into what a screen can show.

/** How much brighter the picture is taken than the screen could show it, so that faint light is seen; full light stays full. */
const EXPOSURE = 5;
/** How far the middle of a full pixel goes to white. */
const WHITENING = 0.3;
/** Cells of the wall: enough that none is seen, few enough to be calculated in a millisecond or two. */
const CELLS = 9000;
/** What the wall looks like without any light: linear, red, green, blue. */
const WALL = [0.0042, 0.005, 0.0068];
/** Source: IEC 61966-2-1:1999, 5.2. */
const LINEAR = Float32Array.from({ length: 256 }, (_, i) => (i <= 10 ? i / 255 / 12.92 : ((i / 255 + 0.055) / 1.055) ** 2.4));

/** The share of light of a byte that a frame has. */
export function linear(byte) {
  return LINEAR[byte];
}

/** A share of light as a screen shows it, 0 to 255. Source: IEC 61966-2-1:1999, 5.2. */
export function encoded(share) {
  const value = share <= 0.0031308 ? 12.92 * share : 1.055 * share ** (1 / 2.4) - 0.055;
  return Math.round(255 * Math.min(1, Math.max(0, value)));
}

/** The shoulder: 0 and 1 stay, and what is faint comes out EXPOSURE times as bright. */
function exposed(light) {
  return EXPOSURE * light / (1 + (EXPOSURE - 1) * light);
}

/**
 * What a source of light looks like: exposed, of its own hue, and whiter the brighter it is.
 *
 * @param whitening how much whiter, 0 to 1; a diffuser has none
 */
export function glare([red, green, blue], whitening = WHITENING) {
  const most = Math.max(red, green, blue);
  if (most === 0) {
    return [0, 0, 0];
  }
  const light = exposed(most);
  const white = whitening * light * light;
  return [red, green, blue].map((value) => encoded(light * ((1 - white) * value / most + white)));
}

/** The wall behind the strip, on which all light falls. */
export class Wall {
  #width;
  #height;
  #cell;
  #light;
  #sums;
  #row;
  #canvas = document.createElement("canvas");
  #image;
  #noise;

  /** A wall of a size in px, without light. */
  constructor(width, height) {
    this.#cell = Math.max(2, Math.sqrt(width * height / CELLS));
    this.#width = Math.max(2, Math.ceil(width / this.#cell));
    this.#height = Math.max(2, Math.ceil(height / this.#cell));
    const cells = this.#width * this.#height;
    this.#light = [0, 1, 2].map(() => new Float32Array(cells));
    this.#sums = [0, 1, 2].map(() => new Float32Array(cells));
    this.#row = new Float32Array(Math.max(this.#width, this.#height));
    this.#canvas.width = this.#width;
    this.#canvas.height = this.#height;
    this.#image = this.#canvas.getContext("2d").createImageData(this.#width, this.#height);
    this.#image.data.fill(255);
    this.#noise = Float32Array.from({ length: 997 }, (_, i) => ((i * 7919) % 997) / 997 - 0.5);
  }

  /** The cells of a size of px. */
  cells(px) {
    return px / this.#cell;
  }

  /** Takes all light away. */
  darken() {
    this.#light.forEach((plane) => plane.fill(0));
    this.#sums.forEach((plane) => plane.fill(0));
  }

  /** Puts the light of a piece of strip, as long as so many px, where it is; spread makes it fall on what is around. */
  put(x, y, colour, px) {
    const left = Math.max(0, Math.min(this.#width - 1.001, x / this.#cell - 0.5));
    const top = Math.max(0, Math.min(this.#height - 1.001, y / this.#cell - 0.5));
    const at = Math.floor(top) * this.#width + Math.floor(left);
    const right = left - Math.floor(left);
    const below = top - Math.floor(top);
    const much = px / this.#cell;
    for (let c = 0; c < 3; c++) {
      const light = colour[c] * much;
      if (light > 0) {
        const plane = this.#light[c];
        plane[at] += light * (1 - right) * (1 - below);
        plane[at + 1] += light * right * (1 - below);
        plane[at + this.#width] += light * (1 - right) * below;
        plane[at + this.#width + 1] += light * right * below;
      }
    }
  }

  /**
   * Spreads all light that was put. Each step spreads what the one before has spread, and adds a share of it: near the strip the wall is
   * bright, and a faint glimmer goes far.
   *
   * @param steps pairs of a width in px and a share of the strip's own light
   */
  spread(steps) {
    let wide = 0;
    for (const [px, share] of steps) {
      const more = Math.sqrt(Math.max(0, (px / this.#cell) ** 2 - wide ** 2));
      wide = px / this.#cell;
      const lit = share * Math.sqrt(2 * Math.PI) * Math.max(0.4, wide);
      for (let c = 0; c < 3; c++) {
        this.#blur(this.#light[c], more);
        this.#add(this.#sums[c], this.#light[c], lit);
      }
    }
  }

  #add(sum, plane, share) {
    for (let i = 0; i < sum.length; i++) {
      sum[i] += share * plane[i];
    }
  }

  /** Adds a pool of light around a lamp, which falls off with the distance: to a quarter at its reach. */
  pool(x, y, colour, reach) {
    for (let row = 0, i = 0; row < this.#height; row++) {
      const down = ((row + 0.5) * this.#cell - y) / reach;
      for (let column = 0; column < this.#width; column++, i++) {
        const across = ((column + 0.5) * this.#cell - x) / reach;
        const share = 1 / (1 + across * across + down * down) ** 2;
        this.#sums[0][i] += colour[0] * share;
        this.#sums[1][i] += colour[1] * share;
        this.#sums[2][i] += colour[2] * share;
      }
    }
  }

  /** Two running means are as good as a Gaussian for light. */
  #blur(plane, sigma) {
    const half = Math.round((Math.sqrt(6 * sigma * sigma + 1) - 1) / 2);
    if (half < 1) {
      return;
    }
    for (let pass = 0; pass < 2; pass++) {
      for (let y = 0; y < this.#height; y++) {
        this.#mean(plane, y * this.#width, 1, this.#width, half);
      }
      for (let x = 0; x < this.#width; x++) {
        this.#mean(plane, x, this.#width, this.#height, half);
      }
    }
  }

  #mean(plane, from, step, count, half) {
    const row = this.#row;
    for (let i = 0; i < count; i++) {
      row[i] = plane[from + i * step];
    }
    const part = 1 / (2 * half + 1);
    let sum = 0;
    for (let i = 0; i < Math.min(half, count); i++) {
      sum += row[i];
    }
    for (let i = 0; i < count; i++) {
      sum += (i + half < count ? row[i + half] : 0) - (i - half - 1 >= 0 ? row[i - half - 1] : 0);
      plane[from + i * step] = sum * part;
    }
  }

  /** Draws it, as large as the picture. */
  draw(pen, width, height) {
    const data = this.#image.data;
    const [reds, greens, blues] = this.#sums;
    for (let i = 0, at = 0; i < reds.length; i++, at += 4) {
      const red = reds[i] + WALL[0];
      const green = greens[i] + WALL[1];
      const blue = blues[i] + WALL[2];
      const most = Math.max(red, green, blue);
      const scale = most / (1 + most) / most * 1.25;
      const noise = this.#noise[(i * 31) % 997];
      data[at] = ENCODED[Math.min(4095, 4095 * red * scale | 0)] + noise;
      data[at + 1] = ENCODED[Math.min(4095, 4095 * green * scale | 0)] + noise;
      data[at + 2] = ENCODED[Math.min(4095, 4095 * blue * scale | 0)] + noise;
    }
    this.#canvas.getContext("2d").putImageData(this.#image, 0, 0);
    pen.imageSmoothingEnabled = true;
    pen.imageSmoothingQuality = "high";
    pen.drawImage(this.#canvas, 0, 0, this.#width, this.#height, 0, 0, this.#width * this.#cell, this.#height * this.#cell);
  }
}

/** Encoded bytes, unrounded, of 4096 steps of light. */
const ENCODED = Float32Array.from({ length: 4096 }, (_, i) => {
  const share = i / 4095;
  return 255 * (share <= 0.0031308 ? 12.92 * share : 1.055 * share ** (1 / 2.4) - 0.055);
});
