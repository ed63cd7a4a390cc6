// The fault, if there is one, and the two things to do about it.

const TITLES = {
  normal: "No fault",
  alert: "Fault, seen by nobody yet",
  acknowledged: "Fault, seen",
  ringback: "Fault seen, and over",
};
const WORDS = {
  normal: "",
  alert: "",
  acknowledged: "It stays lit until it is over, or is reset.",
  ringback: "It stays lit until it is reset.",
};

export class Fault {
  #box = document.getElementById("fault");
  #title = document.getElementById("fault-title");
  #words = document.getElementById("fault-words");
  #acknowledge = document.getElementById("acknowledge");
  #reset = document.getElementById("reset");

  tell(report) {
    this.#box.dataset.alarm = report.alarm;
    set(this.#title, TITLES[report.alarm] ?? report.alarm);
    const told = report.alarm === "normal" ? "" : report.fault_text ?? "";
    this.#offer(this.#acknowledge, report.alarm === "alert");
    this.#offer(this.#reset, report.alarm === "acknowledged" || report.alarm === "ringback");
    set(this.#words, [told, WORDS[report.alarm] ?? ""].filter((text) => text !== "").join(". "));
  }

  /** What can't be done now is not offered; whoever has just pressed it is led on. */
  #offer(button, offered) {
    if (!offered && document.activeElement === button) {
      this.#title.focus();
    }
    button.hidden = !offered;
  }
}

function set(element, text) {
  if (element.textContent !== text) {
    element.textContent = text;
  }
}
