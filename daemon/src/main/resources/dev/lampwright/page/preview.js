// A look played on the page alone, as it would be on the strip now.

export class Preview {
  #show;
  #end;
  #timer = 0;
  #asked = 0;

  /** show is called with each frame of it, as the stream has them; end once it is over, however it came to that. */
  constructor(show, end) {
    this.#show = show;
    this.#end = end;
  }

  /** The name of the look that is being played; empty for none. */
  name = "";

  /** Plays a look; whatever was played before ends. A look that is not available is not played. */
  async play(look) {
    this.stop();
    const asked = ++this.#asked;
    const answer = await fetch(`preview?look=${encodeURIComponent(look)}`).catch(() => null);
    const film = answer?.ok ? await answer.json() : null;
    if (film === null || asked !== this.#asked) {
      return;
    }
    this.name = film.look;
    let next = 0;
    const step = () => {
      if (next === film.frames.length) {
        this.stop();
      } else {
        this.#show(film.frames[next++]);
      }
    };
    step();
    this.#timer = setInterval(step, film.step_ms);
  }

  stop() {
    this.#asked++;
    clearInterval(this.#timer);
    if (this.name !== "") {
      this.name = "";
      this.#end();
    }
  }
}
