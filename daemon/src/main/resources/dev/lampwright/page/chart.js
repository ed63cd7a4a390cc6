// The current of the last minutes under its ceiling: one series, so it is drawn by hand.

import { say } from "./words.js";

const WIDTH = 600;
const HEIGHT = 150;
const SECONDS = 600;

export class Chart {
  #line = document.getElementById("chart-line");
  #area = document.getElementById("chart-area");
  #limit = document.getElementById("chart-ceiling");
  #words = document.getElementById("current-words");
  #sum = document.getElementById("current-now");
  #title = document.getElementById("chart-title");
  #run = "";
  #values = new Map();
  #end = 0;
  #now = 0;
  #ceiling = 0;

  /** More seconds are known; those of another run make the ones before void. */
  add({ run, from_s: from, strip_mA: values }) {
    if (run !== this.#run) {
      this.#run = run;
      this.#values.clear();
      this.#end = 0;
    }
    values.forEach((value, i) => this.#values.set(from + i, value));
    this.#end = Math.max(this.#end, from + values.length);
    for (const second of this.#values.keys()) {
      if (second < this.#end - SECONDS) {
        this.#values.delete(second);
      }
    }
    this.#draw();
  }

  /** What it is now, and the most that it may be, in mA. */
  tell(now, ceiling) {
    this.#now = now;
    this.#ceiling = ceiling;
    this.#sum.textContent = say("rows.current.sum", { now, ceiling });
  }

  #draw() {
    const seconds = [...this.#values.keys()].sort((a, b) => a - b);
    const most = Math.max(0, ...this.#values.values());
    const top = Math.max(this.#ceiling, most, 1);
    const x = (second) => WIDTH * (1 - (this.#end - 1 - second) / (SECONDS - 1));
    const y = (value) => HEIGHT * (1 - value / top);
    let line = "";
    let area = "";
    let before = null;
    let begin = 0;
    for (const second of seconds) {
      const point = `${x(second).toFixed(1)} ${y(this.#values.get(second)).toFixed(1)}`;
      if (before !== second - 1) {
        area += before === null ? "" : `L${x(before).toFixed(1)} ${HEIGHT}L${begin} ${HEIGHT}Z`;
        begin = x(second).toFixed(1);
        line += `M${point}`;
        area += `M${point}`;
      } else {
        line += `L${point}`;
        area += `L${point}`;
      }
      before = second;
    }
    area += before === null ? "" : `L${x(before).toFixed(1)} ${HEIGHT}L${begin} ${HEIGHT}Z`;
    this.#line.setAttribute("d", line);
    this.#area.setAttribute("d", area);
    this.#limit.setAttribute("d", `M0 ${y(this.#ceiling).toFixed(1)}H${WIDTH}`);
    document.getElementById("chart-top").textContent = say("current.ceiling", { ceiling: this.#ceiling });
    this.#words.textContent = say("current.high", { most, ceiling: this.#ceiling });
    this.#title.textContent = say("current.title", { now: this.#now, ceiling: this.#ceiling, most });
  }
}
