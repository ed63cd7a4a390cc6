// Every version of what is being made, so that anything can be undone. Versions never change; a change makes another one.

/** Changes of one thing that follow one another this closely are one version: a slider that is dragged. */
const TOGETHER_MS = 800;

export class Versions {
  #all;
  #at = 0;
  #what = "";
  #putAt = -Infinity;
  #onChange;

  /** onChange is called with each version that becomes the one that counts. */
  constructor(first, onChange) {
    this.#all = [first];
    this.#onChange = onChange;
  }

  get now() {
    return this.#all[this.#at];
  }

  get canUndo() {
    return this.#at > 0;
  }

  get canRedo() {
    return this.#at < this.#all.length - 1;
  }

  /** Adds a version; what says which one thing was changed, empty for several. What had been undone is gone. */
  put(next, what = "", at = performance.now()) {
    const together = what !== "" && what === this.#what && at - this.#putAt < TOGETHER_MS && !this.canRedo && this.canUndo;
    this.#all = [...this.#all.slice(0, this.#at + (together ? 0 : 1)), next];
    this.#what = what;
    this.#putAt = at;
    this.#go(this.#all.length - 1);
  }

  undo() {
    if (this.canUndo) {
      this.#what = "";
      this.#go(this.#at - 1);
    }
  }

  redo() {
    if (this.canRedo) {
      this.#what = "";
      this.#go(this.#at + 1);
    }
  }

  #go(at) {
    this.#at = at;
    this.#onChange(this.now);
  }
}
