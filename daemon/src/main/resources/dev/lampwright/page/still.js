// What of the frames is drawn, and when. Drawing leaves frames out and never adds any, so it adds no flash to what the daemon sends, which
// is at most three in a second; frames that come late and close together are left out too, so that none is drawn out of its time. A look
// that flashes is drawn as a long exposure instead, the brightest of each light over the last seconds, once a second with a slow change.

const LEAST_MS = 50;
const LATE_MS = 300;
const STILL_EVERY_MS = 1000;
const EXPOSURE = 5;
const HOLD_MS = 4000;

export class Pace {
  #newest = null;
  #drawnAt = -Infinity;
  #least = Infinity;
  #exposures = [];
  #exposing = null;
  #flashedAt = -Infinity;

  /** A frame has come. */
  take(frame, now, flashes) {
    this.#newest = { frame, late: this.#late(frame, now) };
    if (flashes) {
      this.#flashedAt = now;
    }
    this.#exposing = brighter(this.#exposing, frame);
  }

  /** Frames from before count no more: the lights or the stream are others. */
  forget() {
    this.#newest = null;
    this.#least = Infinity;
    this.#exposures = [];
    this.#exposing = null;
    this.#drawnAt = -Infinity;
  }

  /** Whether light has flashed just now. */
  flashes(now) {
    return now - this.#flashedAt < HOLD_MS;
  }

  /** What to draw now: a frame and how long the change to it takes, in ms; or nothing. */
  next(now, showFlashing, calm) {
    const still = this.flashes(now) && !showFlashing;
    if (still || calm) {
      return this.#slow(now, still);
    }
    this.#exposures = [];
    this.#exposing = null;
    if (this.#newest === null || now - this.#drawnAt < LEAST_MS) {
      return null;
    }
    const { frame, late } = this.#newest;
    if (late && now - this.#drawnAt < LATE_MS) {
      return null;
    }
    this.#newest = null;
    this.#drawnAt = now;
    return { frame, fade: 0 };
  }

  #slow(now, still) {
    if (now - this.#drawnAt < STILL_EVERY_MS || (this.#exposing === null && this.#exposures.length === 0)) {
      return null;
    }
    this.#drawnAt = now;
    const last = this.#newest?.frame ?? this.#exposures.at(-1);
    this.#exposures.push(this.#exposing ?? last);
    this.#exposures = this.#exposures.slice(-EXPOSURE);
    this.#exposing = this.#newest === null ? null : copy(this.#newest.frame);
    return { frame: still ? this.#exposures.reduce(brighter, null) : last, fade: STILL_EVERY_MS };
  }

  /** By how much longer than the quickest this frame was on its way. */
  #late(frame, now) {
    const way = now - frame.at;
    this.#least = Math.min(this.#least, way);
    return way - this.#least > LATE_MS;
  }
}

function copy(frame) {
  return { ...frame, strip: frame.strip.slice(), duties: frame.duties.slice() };
}

function brighter(held, frame) {
  if (held === null || held.strip.length !== frame.strip.length) {
    return copy(frame);
  }
  return {
    ...frame,
    strip: held.strip.map((value, i) => Math.max(value, frame.strip[i])),
    duties: held.duties.map((value, i) => Math.max(value, frame.duties[i] ?? 0)),
  };
}
