// Puts the items of a list in another order, by a handle of each: dragged, or with the arrow keys.

export class Drag {
  #item;
  #move;
  #began = null;

  /** move is called with the place where an item is and the one where it is to be, both counted from the top. */
  constructor(item, handle, move) {
    this.#item = item;
    this.#move = move;
    handle.addEventListener("pointerdown", (event) => this.#begin(event, handle));
    handle.addEventListener("pointermove", (event) => this.#drag(event));
    handle.addEventListener("pointerup", () => this.#end(true));
    handle.addEventListener("pointercancel", () => this.#end(false));
    handle.addEventListener("keydown", (event) => this.#key(event));
  }

  get #items() {
    return [...this.#item.parentElement.children];
  }

  #begin(event, handle) {
    if (event.button !== 0) {
      return;
    }
    event.preventDefault();
    handle.focus();
    handle.setPointerCapture(event.pointerId);
    const items = this.#items;
    const from = items.indexOf(this.#item);
    this.#began = { y: event.clientY, from, to: from, middles: items.map((item) => middleOf(item)), height: this.#item.offsetHeight };
    this.#item.classList.add("dragged");
  }

  #drag(event) {
    if (this.#began === null) {
      return;
    }
    const { y, from, middles, height } = this.#began;
    const by = event.clientY - y;
    const at = middles[from] + by;
    const to = middles.filter((middle, i) => i !== from && middle < at).length;
    this.#began.to = to;
    this.#items.forEach((item, i) => {
      const passed = i === from ? by : i > from && i <= to ? -height : i < from && i >= to ? height : 0;
      item.style.transform = `translateY(${passed}px)`;
    });
  }

  #end(drop) {
    if (this.#began === null) {
      return;
    }
    const { from, to } = this.#began;
    this.#began = null;
    this.#item.classList.remove("dragged");
    this.#items.forEach((item) => {
      item.style.transform = "";
    });
    if (drop && from !== to) {
      this.#move(from, to);
    }
  }

  #key(event) {
    if (event.key === "Escape") {
      this.#end(false);
      return;
    }
    const items = this.#items;
    const from = items.indexOf(this.#item);
    const last = items.length - 1;
    const to = { ArrowUp: from - 1, ArrowDown: from + 1, Home: 0, End: last }[event.key];
    if (to !== undefined) {
      event.preventDefault();
      if (to >= 0 && to <= last && to !== from) {
        this.#move(from, to);
      }
    }
  }
}

function middleOf(item) {
  const { top, height } = item.getBoundingClientRect();
  return top + height / 2;
}
