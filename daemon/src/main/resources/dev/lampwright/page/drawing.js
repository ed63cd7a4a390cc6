// Draws frames on the stage, each when it is due; nothing runs while nothing is.

import { Motion } from "./motion.js";
import { Pace } from "./still.js";

/** Longer waits need no frame of the browser's own. */
const SOON_MS = 60;

export class Drawing {
  #stage;
  #pace = new Pace();
  #motion = new Motion();
  #calm = matchMedia("(prefers-reduced-motion: reduce)");
  #waiting = 0;

  constructor(stage) {
    this.#stage = stage;
    document.addEventListener("visibilitychange", () => this.wake());
  }

  /** A frame of a look, and whether that look flashes. */
  take(frame, look, flashes) {
    this.#pace.take(frame, performance.now(), look, flashes);
    this.wake();
  }

  /** What was drawn before has nothing to do with what comes. */
  forget() {
    this.#pace.forget();
  }

  /** Sees to it that whatever is due is drawn. */
  wake() {
    if (this.#waiting === 0 && !document.hidden) {
      const wait = this.#pace.due(performance.now());
      this.#waiting = wait > SOON_MS ? -setTimeout(() => this.#draw(performance.now()), wait) : requestAnimationFrame((time) => this.#draw(time));
    }
  }

  #draw(time) {
    this.#waiting = 0;
    const next = this.#pace.next(time, this.#motion.moving, this.#calm.matches);
    if (next !== null) {
      this.#stage.show(next, time);
    }
    if (this.#stage.step(time)) {
      this.#waiting = requestAnimationFrame((then) => this.#draw(then));
    } else if (this.#pace.due(time) < Infinity) {
      this.wake();
    }
  }
}
