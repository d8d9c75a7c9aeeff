// The window's history of screens.
//
// Every entry of the history holds its place, its throw, its depth, and the depth of the tab
// screen at or below it. The way back therefore leads to where a screen was opened from, and a
// side screen returns to its tab in one step, however many screens were opened from one another.
// A browser's history goes back only some time after it was asked to. Until then the trail is
// returning, and no other move starts: moves are made in the order in which they were asked for,
// each from where the one before has led.

import { isTab, type Place } from './places';

/** An entry of the history. */
export interface Spot {
  place: Place;
  id: string | null;
  depth: number;
  /** Depth of the tab screen at or beneath this one. */
  tab: number | null;
}

/** What is needed of the window's history. */
export type Steps = Pick<History, 'pushState' | 'replaceState' | 'back' | 'go'>;

/** At rest, or on the way back to a place that is then taken by `to`. */
type Way = { is: 'resting' } | { is: 'returning'; to: Place | null; arrived: () => void };

const SHELF: Spot = { place: { at: 'shelf' }, id: null, depth: 0, tab: null };

export class Trail {
  private depth = 0;
  private tab: number | null = null;
  private way: Way = { is: 'resting' };
  private readonly waiting: (() => void)[] = [];

  constructor(private readonly steps: Steps) {}

  get isResting() {
    return this.way.is === 'resting';
  }

  /** Nothing lies beneath. */
  get isFirst() {
    return this.depth === 0;
  }

  /** Whether an entry of the history lies below the present one. */
  isBelow(state: unknown) {
    return ((state as Spot | null) ?? SHELF).depth < this.depth;
  }

  /** How many screens were opened from the tab screen, one from another. */
  get aside() {
    return this.tab === null ? 0 : Math.max(0, this.depth - this.tab);
  }

  /** Make this move now, or once nothing is on its way back. */
  move<T>(run: () => Promise<T>): Promise<T> {
    return new Promise((done, failed) => {
      this.waiting.push(() => void run().then(done, failed));
      this.next();
    });
  }

  /** One screen further; with `over` the place takes that of the present one. */
  step(place: Place, id: string | null, over: boolean) {
    if (!over) this.depth += 1;
    if (isTab(place)) this.tab = this.depth;
    else if (id === null) this.tab = null;
    const spot: Spot = { place, id, depth: this.depth, tab: this.tab };
    if (over) this.steps.replaceState(spot, '');
    else this.steps.pushState(spot, '');
  }

  /** Back to where the present screen was opened from. */
  back() {
    this.steps.back();
  }

  /** Return to the tab screen beneath, or to `to` in its place; resolves once it is shown. */
  leave(to: Place | null): Promise<void> {
    return this.returned(this.aside, to);
  }

  /** Return to where the trail began, and to `to` there; resolves once it is shown. */
  restart(to: Place): Promise<void> {
    return this.returned(this.depth, to);
  }

  /** The history has come back, or the maker has moved it: `arrive` shows what stands there. */
  async popped(state: unknown, arrive: (place: Place, id: string | null) => Promise<void>) {
    const { way } = this;
    this.way = { is: 'resting' };
    const spot = (state as Spot | null) ?? SHELF;
    this.depth = spot.depth;
    this.tab = spot.tab;
    const to = way.is === 'returning' && state ? way.to : null;
    if (to) this.steps.replaceState({ ...spot, place: to }, '');
    const arrival = arrive(to ?? spot.place, spot.id);
    this.next();
    await arrival;
    if (way.is === 'returning') way.arrived();
  }

  /** Make the moves that wait, until one of them is on its way back. */
  private next() {
    while (this.isResting) {
      const move = this.waiting.shift();
      if (!move) return;
      move();
    }
  }

  private returned(by: number, to: Place | null): Promise<void> {
    return new Promise((arrived) => {
      this.way = { is: 'returning', to, arrived };
      this.steps.go(-by);
    });
  }
}
