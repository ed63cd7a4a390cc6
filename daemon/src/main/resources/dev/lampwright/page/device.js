// What concerns this device alone: a notice when something happens, the page on a phone, and leaving.

import { say } from "./words.js";

const NOTIFY = "lampwright.notify";
const byId = (id) => document.getElementById(id);

export class Device {
  #onChange;

  /** onChange is called when notices are switched on or off. */
  constructor(onChange) {
    this.#onChange = onChange;
    byId("notify").addEventListener("click", () => this.#switch());
    byId("leave").addEventListener("click", async () => {
      await fetch("leave", { method: "POST", headers: { "Content-Type": "application/json" }, body: "{}" }).catch(() => null);
      location.reload();
    });
    byId("row-device").addEventListener("toggle", () => this.#showCode());
    this.#tell();
  }

  /** Whether somebody has asked for notices while the page is out of sight. */
  get wanted() {
    return this.#able() && Notification.permission === "granted" && localStorage.getItem(NOTIFY) === "yes";
  }

  /** Says it beside the page, if it is out of sight. */
  async notify(title, words) {
    if (!this.wanted || !document.hidden) {
      return;
    }
    const notice = { body: words, icon: "icon-192.png", tag: title };
    const worker = await this.#worker();
    if (worker !== null) {
      await worker.showNotification(title, notice);
      return;
    }
    try {
      new Notification(title, notice);
    } catch {
      localStorage.setItem(NOTIFY, "no");
    }
  }

  /** What shows notices; null where the browser has none, and the page has to show them itself, if it may. */
  async #worker() {
    try {
      await navigator.serviceWorker.register("notices.js");
      return await navigator.serviceWorker.ready;
    } catch {
      return null;
    }
  }

  /** What the viewer may do. */
  lay({ token }) {
    byId("leave").hidden = !token;
  }

  /** Browsers allow notices only where nobody can have changed the page on its way. */
  #able() {
    return "Notification" in window && window.isSecureContext;
  }

  async #switch() {
    const wanted = !this.wanted && (await Notification.requestPermission()) === "granted";
    localStorage.setItem(NOTIFY, wanted ? "yes" : "no");
    if (wanted) {
      await this.#worker();
    }
    this.#tell();
    this.#onChange();
  }

  #tell() {
    byId("notify").disabled = !this.#able();
    byId("notify").setAttribute("aria-pressed", this.wanted);
    byId("notify-words").textContent = say(this.#able() ? "device.notify.words" : "device.notify.unable");
  }

  /** Only when it is looked at: the code has the token in it. */
  async #showCode() {
    const box = byId("code");
    box.replaceChildren();
    if (!byId("row-device").open) {
      return;
    }
    const answer = await fetch("code.svg").catch(() => null);
    byId("code-words").textContent = say(answer?.ok ? "device.code" : "device.code.none");
    if (answer?.ok) {
      const picture = document.createElement("img");
      picture.src = "code.svg";
      picture.alt = say("device.code.alt");
      box.append(picture);
    }
  }
}
