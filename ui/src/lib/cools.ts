// Cooling ends by itself.
//
// The core says when the next of what lies cooling is cool. At that time the maker is told: by a
// sound and a vibration where the device allows them and she has not silenced them, and in words.
// Timers of a page that sleeps fire late; what is shown then is right all the same, because the
// core compares the time with its own clock.

/** Two short rising notes; silent where no sound may be made. */
function ring() {
  try {
    const audio = new AudioContext();
    for (const [note, pitch] of [660, 880].entries()) {
      const from = audio.currentTime + note * 0.25;
      const tone = audio.createOscillator();
      const loud = audio.createGain();
      tone.frequency.value = pitch;
      loud.gain.setValueAtTime(0, from);
      loud.gain.linearRampToValueAtTime(0.25, from + 0.02);
      loud.gain.linearRampToValueAtTime(0, from + 0.22);
      tone.connect(loud).connect(audio.destination);
      tone.start(from);
      tone.stop(from + 0.25);
      if (note === 1) tone.onended = () => void audio.close().catch(() => undefined);
    }
  } catch {
    // There is no sound here.
  }
}

/** Tell by sound and vibration that something is cool. */
export function signal() {
  try {
    navigator.vibrate?.([200, 100, 200]);
  } catch {
    // Nor may this device vibrate.
  }
  ring();
}

/** What is needed of the window's clock. */
export interface Clock {
  now: () => number;
  after: (run: () => void, ms: number) => number;
  stop: (timer: number) => void;
}

export class Cools {
  private at: number | null = null;
  private timer: number | null = null;

  /** `cooled` is called each time something has become cool. */
  constructor(
    private readonly clock: Clock,
    private readonly cooled: () => void,
  ) {}

  /**
   * Follow what the core says last: when the next is cool, or that nothing cools.
   *
   * The core may be asked, and say so, between a time and the timer that is set for it: what has
   * become cool by then is told all the same.
   */
  follow(at: number | null) {
    if (at === this.at) return;
    const due = this.timer !== null && this.at !== null && this.at <= this.clock.now();
    this.at = at;
    if (this.timer !== null) this.clock.stop(this.timer);
    this.timer = null;
    if (due) this.cooled();
    if (at === null) return;
    const wait = Math.max(0, at - this.clock.now());
    this.timer = this.clock.after(() => {
      this.timer = null;
      this.cooled();
    }, wait);
  }
}
