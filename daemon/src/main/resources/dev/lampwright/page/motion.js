// Whether flashing light is drawn as it flashes: only for those who have asked for it and read the warning.

const MOVING = "lampwright.moving";
const byId = (id) => document.getElementById(id);

export class Motion {
  #moving = sessionStorage.getItem(MOVING) === "yes";

  constructor() {
    byId("motion").addEventListener("click", () => this.#press());
    for (const [id, choice] of [["motion-keep", false], ["motion-show", true]]) {
      byId(id).addEventListener("click", () => {
        this.#choose(choice);
        byId("motion").focus();
      });
    }
    this.#choose(this.#moving);
  }

  get moving() {
    return this.#moving;
  }

  #press() {
    if (this.#moving) {
      this.#choose(false);
    } else {
      byId("motion-ask").hidden = false;
      byId("motion-keep").focus();
    }
  }

  #choose(moving) {
    this.#moving = moving;
    byId("motion").setAttribute("aria-pressed", moving);
    sessionStorage.setItem(MOVING, moving ? "yes" : "no");
    byId("motion-ask").hidden = true;
  }
}
