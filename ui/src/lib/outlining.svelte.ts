// The outline of a piece that is being typed and dragged. The core is asked one question at a
// time, the newest next; meanwhile the last answer stays. The core works out what a drag means
// from the drawing under the finger, so every question of a drag contains the outline as it was
// when the drag began.

import { openThrow, preferences, screens } from './store';
import type { Drag, Handle, Query, Picture, PieceTyped, PileCutView, ZoneKind } from './types';

/** How long after the last key the core is asked, in milliseconds. */
const PAUSE = 120;
/** How far an arrow key moves a point, in the drawing's units: past any ruler's next mark. */
const NUDGE = 4;
const FAR = 20;

/** Outlines changed but not kept yet, by throw and piece. */
const unkept: Partial<Record<string, PieceTyped>> = {};

/** A part of the drawing. */
export interface Frame {
  x: number;
  y: number;
  width: number;
  height: number;
}

type ZoneTyped = PieceTyped['zones'][number];

const same = (a: ZoneTyped | undefined, b: ZoneTyped | undefined) =>
  a !== undefined && b !== undefined && JSON.stringify(a) === JSON.stringify(b);

const copy = (typed: PieceTyped): PieceTyped => ({
  stations: typed.stations.map((s) => ({ ...s })),
  zones: typed.zones.map((z) => ({ ...z })),
});

export class Outlining {
  typed: PieceTyped;
  /** The last drawing there was, for while what is typed cannot be drawn. */
  drawn: { picture: Picture; handles: Handle[] } | null;
  /** The point held, with the outline and the drawing it was taken hold of in. */
  held = $state.raw<{ station: number; base: PieceTyped | null; view: PileCutView } | null>(null);

  /**
   * The places to keep clear that nobody typed, each with its fields as they are kept and as
   * they were shown last. The core is asked with the former, so that it lets the place go with
   * the cloth; the latter show where it lies now.
   */
  private carried: ({ kept: ZoneTyped; shown: ZoneTyped } | null)[] = [];
  /** Something differs from what is kept, as far as is known here. */
  private touched = false;
  /** The questions being asked; ends with the last one's answer. */
  private flight: Promise<boolean> | null = null;
  private next: Query | null = null;
  private stopped = false;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private readonly key: string;

  constructor(private view: PileCutView) {
    this.key = `${openThrow.id} ${view.n} ${view.index}`;
    this.typed = $state(copy(view.tidy));
    this.keeps(view.tidy);
    this.drawn = $state.raw(null);
  }

  /** Whether the outline was changed and left without being kept. */
  get isUnkept(): boolean {
    return this.view.counted === null && unkept[this.key] !== undefined;
  }

  /** For as long as the screen is shown; gives what ends it. */
  begin(): () => void {
    const left = this.view.counted === null ? unkept[this.key] : undefined;
    if (left) {
      this.typed = copy(left);
      this.note();
      this.touched = true;
      void this.now();
    }
    const spell = () => this.spell();
    const closed = preferences.open({ spell, reread: spell });
    return () => {
      this.stop();
      // Put away as it was last read, with its units spelled out.
      const draft = this.touched && !this.view.faults.length && this.view.keep;
      if (draft) unkept[this.key] = this.asked(this.view.tidy);
      else delete unkept[this.key];
      closed();
    };
  }

  stop() {
    this.stopped = true;
    this.next = null;
    clearTimeout(this.timer);
  }

  /** A new answer has come. */
  take(view: PileCutView) {
    this.view = view;
    if (view.picture) this.drawn = { picture: view.picture, handles: view.handles };
    const { query } = openThrow;
    if (query?.see === 'cutting' && query.typed === null && query.drag === null) {
      // Read again, as after undo: the fields follow.
      this.typed = copy(view.tidy);
      this.keeps(view.tidy);
      this.touched = false;
    }
  }

  /** These fields are the ones kept. */
  private keeps(tidy: PieceTyped) {
    this.carried = tidy.zones.map((zone) => ({ kept: { ...zone }, shown: { ...zone } }));
  }

  /** What is typed, with the places nobody typed as they are kept. */
  private asked(typed: PieceTyped): PieceTyped {
    const question = copy(typed);
    question.zones = question.zones.map((zone, n) => this.carried[n]?.kept ?? zone);
    return question;
  }

  /** The places nobody typed are shown where the core says they lie now. */
  private follow(tidy: PieceTyped) {
    this.carried.forEach((of, n) => {
      if (!of || !same(of.shown, this.typed.zones[n]) || !(n in tidy.zones)) return;
      of.shown = { ...tidy.zones[n] };
      this.typed.zones[n] = { ...tidy.zones[n] };
    });
  }

  /** Places whose fields differ from what was shown are typed. */
  private note() {
    this.typed.zones.forEach((zone, n) => {
      if (!same(this.carried[n]?.shown, $state.snapshot(zone))) this.carried[n] = null;
    });
  }

  private query(typed: PieceTyped | null, drag: Drag | null): Query {
    return { see: 'cutting', n: this.view.n, index: this.view.index, typed, drag };
  }

  /**
   * Nothing is asked any more: the screen is gone, or the window is bound for another one, whose
   * answer a question of this one would overtake.
   */
  private get isOver(): boolean {
    return this.stopped || screens.bound !== 'cutting';
  }

  /** Ask, or once the present question is answered; true if the last asked was answered. */
  private ask(query: Query): Promise<boolean> {
    if (this.isOver) return Promise.resolve(false);
    this.next = query;
    this.flight ??= this.fly();
    return this.flight;
  }

  /** Ask one question after another, until none newer is left. */
  private async fly(): Promise<boolean> {
    let seen = false;
    try {
      while (this.next && !this.isOver) {
        const question: Query = this.next;
        this.next = null;
        seen = await openThrow.see(question);
        const dragged = question.see === 'cutting' && question.drag !== null;
        if (!seen || openThrow.view?.seen !== 'cutting') continue;
        const { tidy, faults } = openThrow.view;
        if (dragged) {
          this.typed.stations = copy(tidy).stations;
          this.typed.zones = tidy.zones.map((zone) => ({ ...zone }));
          this.carried = this.carried.map((of, n) => of && { ...of, shown: { ...tidy.zones[n] } });
        } else if (question.see === 'cutting' && question.typed && !faults.length) {
          this.follow(tidy);
        }
      }
    } finally {
      this.flight = null;
    }
    return seen;
  }

  // Typing.

  changed() {
    this.touched = true;
    this.note();
    clearTimeout(this.timer);
    this.timer = setTimeout(() => void this.now(), PAUSE);
  }

  /** What was typed last, read, once every question asked before is answered. */
  async now(): Promise<PileCutView | null> {
    clearTimeout(this.timer);
    const typed = this.touched ? this.asked($state.snapshot(this.typed)) : null;
    const seen = await this.ask(this.query(typed, null));
    return seen && openThrow.view?.seen === 'cutting' ? openThrow.view : null;
  }

  /** A field was left: show what was read, its unit spelled out. */
  async left(
    field: string,
    get: (typed: PieceTyped) => string | undefined,
    set: (s: string) => void,
  ) {
    if (!this.touched || this.held) return;
    const before = get(this.typed);
    const view = await this.now();
    const read = view && get(view.tidy);
    if (!view || read === undefined || read === null || get(this.typed) !== before) return;
    if (!view.faults.some((f) => f.field === field)) set(read);
  }

  /** Spell every unit out, so that another ruler cannot change a measure. */
  private async spell() {
    const view = await this.now();
    if (!view) return;
    this.typed = copy(view.tidy);
    if (this.touched) this.carried = [];
    else this.keeps(view.tidy);
  }

  addStation(after: number) {
    this.typed.stations.splice(after + 1, 0, { at: '', width: '' });
    this.changed();
  }

  removeStation(n: number) {
    this.typed.stations.splice(n, 1);
    this.changed();
  }

  addZone(kind: ZoneKind) {
    this.typed.zones.push({ kind, from: '', to: '', left: '', width: '' });
    this.changed();
  }

  removeZone(n: number) {
    this.typed.zones.splice(n, 1);
    this.carried.splice(n, 1);
    this.changed();
  }

  // Dragging.

  private base(): PieceTyped | null {
    return this.touched ? this.asked(this.view.tidy) : null;
  }

  hold(station: number) {
    clearTimeout(this.timer);
    this.held = { station, base: this.base(), view: this.view };
  }

  drag(x: number, y: number) {
    if (!this.held) return;
    const { station, base, view } = this.held;
    this.touched = true;
    // As long as it is held, only this piece is laid out.
    void this.ask(this.query(base, { station, x, y, held_strips: view.expected_strips }));
  }

  /** The point is let go: now the whole pile is laid out with it. */
  drop() {
    const moved = this.held !== null && this.touched;
    this.held = null;
    if (moved) void this.settle();
  }

  private async settle() {
    await this.flight;
    if (!this.held) await this.ask(this.query(this.base(), null));
  }

  /** Move a point a little; true when it was. */
  async nudge(handle: Handle, across: number, down: number, far: boolean): Promise<boolean> {
    if (this.flight || this.held) return false;
    const by = far ? FAR : NUDGE;
    const drag = {
      station: handle.station,
      x: handle.x + across * by,
      y: handle.y + down * by,
    };
    const base = this.base();
    this.touched = true;
    return this.ask(this.query(base, drag));
  }

  /**
   * What of the drawing is shown. While a point is held the frame stays where it was, by
   * the points that do not move, so that nothing slips from under the finger.
   */
  frame(picture: Picture, handles: Handle[]): Frame {
    const held = this.held;
    const around = held?.view.picture ?? picture;
    const rim = Math.max(around.width, around.height) * 0.012;
    let [x, y] = [0, 0];
    if (held) {
      const still = held.view.handles.find((h) => h.station !== held.station);
      const now = still && handles.find((h) => h.station === still.station);
      if (still && now) [x, y] = [now.x - still.x, now.y - still.y];
    }
    return {
      x: x - rim,
      y: y - rim,
      width: around.width + rim * 2,
      height: around.height + rim * 2,
    };
  }

  /** Drop what was changed and read the outline as it is kept. */
  async asKept() {
    clearTimeout(this.timer);
    this.touched = false;
    this.held = null;
    await this.ask(this.query(null, null));
  }
}
