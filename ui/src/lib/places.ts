// The screens of the window, and the question that each of them asks the core first.
//
// The places are made of the core's own types: every view is a place, so that none is listed
// twice. A screen exports a `room` that says what it asks when it is opened. `Rooms.svelte`
// collects the rooms of all screens and passes them in here. This module knows no screen and
// keeps no state but that collection.

import type { Query, View } from './types';

type Seen = View['seen'];

/** What is asked to see this view. */
type Question<S extends Seen> = Extract<Query, { see: S }>;

/** A screen is named as its view is, but for this one. */
type Named<S extends Seen> = S extends 'wishes' ? 'layouts' : S;

/** The fields of a question that say what it is about; the others are filled in on the screen. */
type About = 'piece' | 'why' | 'n' | 'index';

type PlaceOf<S extends Seen> = S extends Seen
  ? { at: Named<S> } & Pick<Question<S>, keyof Question<S> & About>
  : never;

/** Screens that are not of an open throw. */
type Outside = { at: 'shelf' } | { at: 'new' } | { at: 'settings' };

/** Which screen. */
export type Place = Outside | PlaceOf<Seen>;

/** The screens of a throw that lie side by side, in their order. */
export const TABS = ['work', 'pile', 'faces', 'bench', 'plan', 'history'] as const;
export type Tab = (typeof TABS)[number];

export const isTab = (place: Place): place is Extract<Place, { at: Tab }> =>
  (TABS as readonly string[]).includes(place.at);

/** Whether it shows an open throw. */
export const isOfThrow = (place: Place): place is PlaceOf<Seen> =>
  place.at !== 'shelf' && place.at !== 'new' && place.at !== 'settings';

/** Whether it is a screen for one thing, opened from another of the throw's. */
export const isApart = (place: Place) => isOfThrow(place) && !isTab(place);

/** What a screen of a throw says of itself. */
export interface Room<S extends Seen = Seen> {
  at: Named<S>;
  /** The view it shows. */
  seen: S;
  /** What it asks when it is gone to. */
  first(place: PlaceOf<S>, id: string): Question<S>;
}

/** The room of a screen that shows `seen`, named so or as `at` says. */
export function room<S extends Seen>(
  seen: S,
  first: Room<S>['first'],
  at = seen as unknown as Named<S>,
): Room<S> {
  return { at, seen, first };
}

/** The rooms of all screens, loaded when they are first needed. */
export class Rooms {
  private coming: Promise<unknown> | null = null;
  private found: Partial<Record<string, Room>> | null = null;
  /** Loads the screens, which then hand in their rooms; set where the window begins. */
  load: () => Promise<unknown> = () => Promise.reject(new Error('no screens'));

  get areThere() {
    return this.found !== null;
  }

  /** Resolves once the rooms are there; a load that failed is tried again the next time. */
  async come() {
    this.coming ??= this.load();
    try {
      await this.coming;
    } catch (why) {
      this.coming = null;
      throw why;
    }
  }

  /** Take in the rooms of all screens. */
  set(rooms: Room[]) {
    this.found = Object.fromEntries(rooms.map((room) => [room.at, room]));
  }

  /** What is asked when a place is gone to. */
  first(place: Place, id: string): Query {
    const room = this.found?.[place.at];
    if (!room) throw new Error(`no screen for ${place.at}`);
    return room.first(place as PlaceOf<Seen>, id);
  }
}
