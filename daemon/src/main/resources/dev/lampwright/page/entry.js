// How a person who knows a token gets in: by the form, or with the token behind the address's #.

import { reason, say } from "./words.js";

const byId = (id) => document.getElementById(id);

export class Entry {
  /** entered is called once the form has let a person in. */
  constructor(entered) {
    byId("entry-form").addEventListener("submit", async (event) => {
      event.preventDefault();
      if (await enter(byId("token").value)) {
        byId("token").value = "";
        entered();
      }
    });
    byId("token-shown").addEventListener("change", (event) => {
      byId("token").type = event.target.checked ? "text" : "password";
    });
  }

  /**
   * A token behind the address's # leaves the browser only in the request to come in; it is removed from the address at once. Returns whether
   * there was one.
   */
  async takeToken() {
    const token = unescaped(location.hash.slice(1));
    if (token === "" || byId(token) !== null) {
      return false;
    }
    history.replaceState(null, "", location.pathname);
    await enter(token);
    return true;
  }
}

/** Whether this page is open now; a token of a single rig leads to the page of that rig instead. */
async function enter(token) {
  try {
    const response = await fetch("enter", {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify({ token }),
      signal: AbortSignal.timeout(8000),
    });
    const answer = await response.json();
    byId("entry-answer").textContent = answer.done ? "" : say("entry.refused", { why: reason(answer) });
    byId("token").setAttribute("aria-invalid", !answer.done);
    if (answer.page !== undefined) {
      location.assign(answer.page);
      return false;
    }
    return answer.done;
  } catch {
    byId("entry-answer").textContent = say("entry.silent");
    return false;
  }
}

/** A token may contain a percent sign that escapes nothing. */
function unescaped(text) {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
