// Which screen is shown, and how the window goes to another.
//
// A screen of a throw is shown together with the answer to its first question, and not before.
// Every move to a screen has a number; a move that a newer one has overtaken shows nothing. A
// throw that cannot be opened leads to the shelf, and a piece that no longer exists to the tab
// screen below; in both cases the problem stays visible.

import type { OpenThrow } from './open-throw.svelte';
import { isOfThrow, isTab, type Place, type Rooms } from './places';
import type { Messages } from './messages.svelte';
import type { Trail } from './trail';

export class Screens {
  place = $state.raw<Place>({ at: 'shelf' });
  /** Counts arrivals, so that the focus can be moved. */
  arrived = $state(0);
  /** Where the window is bound for; a screen that goes may ask. */
  bound: Place['at'] = 'shelf';

  private journey = 0;

  /** `leaving` is called on each journey, `shelved` when the shelf is come to. */
  constructor(
    private readonly trail: Trail,
    private readonly rooms: Rooms,
    private readonly openThrow: OpenThrow,
    private readonly messages: Messages,
    private readonly leaving: () => void,
    private readonly shelved: () => Promise<void>,
  ) {}

  /** Go to a screen; `over` takes the place of the present one. */
  go(place: Place, id: string | null = this.openThrow.id, over = false): Promise<void> {
    return this.trail.move(() => this.step(place, id, over));
  }

  /** Go back to where this screen was opened from. */
  back() {
    if (!this.trail.isResting) return;
    if (this.trail.isFirst) void this.step({ at: 'shelf' }, null, true);
    else this.trail.back();
  }

  /**
   * Leave a side screen, with all that were opened from it, for the tab screen
   * beneath, or for `to` in its place.
   */
  leave(to: Place | null = null): Promise<void> {
    return this.trail.move(() =>
      this.trail.aside > 0
        ? this.trail.leave(to)
        : this.step(to ?? { at: 'work' }, this.openThrow.id, true),
    );
  }

  /** To the shelf, from wherever this screen was opened. */
  toShelf(): Promise<void> {
    return this.trail.move(() =>
      this.trail.isFirst
        ? this.step({ at: 'shelf' }, null, true)
        : this.trail.restart({ at: 'shelf' }),
    );
  }

  /** The history has moved. */
  popped(state: unknown): Promise<void> {
    return this.trail.popped(state, (place, id) => this.arrive(place, id));
  }

  /** The screen is the same, but what had the focus is gone: it goes to the heading. */
  refocus() {
    this.arrived += 1;
  }

  private step(place: Place, id: string | null, over: boolean): Promise<void> {
    this.trail.step(place, id, over);
    return this.arrive(place, id);
  }

  private async arrive(place: Place, id: string | null) {
    const journey = ++this.journey;
    this.bound = place.at;
    this.messages.clear();
    this.leaving();
    if (place.at === 'shelf' || place.at === 'new') {
      this.openThrow.hold(null);
      this.show(place);
      await this.shelved();
      return;
    }
    const other = this.openThrow.hold(id);
    if (!isOfThrow(place) || id === null) {
      this.show(place);
      return;
    }
    let shown = false;
    const show = () => {
      if (journey !== this.journey || shown) return;
      shown = true;
      this.show(place);
    };
    const seen = await this.firstView(place, id, show);
    if (journey !== this.journey) return;
    const { problem } = this.messages;
    const closed = other && !this.openThrow.view;
    if (!seen && problem && (closed || !isTab(place))) {
      // The throw cannot be opened, or the piece no longer exists.
      await (closed ? this.go({ at: 'shelf' }, null, true) : this.leave());
      this.messages.problem = problem;
      return;
    }
    show();
  }

  /** Ask what a screen asks first, and show it once that is answered. */
  private async firstView(place: Place, id: string, show: () => void): Promise<boolean> {
    try {
      if (!this.rooms.areThere) await this.rooms.come();
      if (this.openThrow.id !== id) return false;
      return await this.openThrow.see(this.rooms.first(place, id), show);
    } catch (thrown) {
      this.messages.fail(thrown);
      return false;
    }
  }

  private show(place: Place) {
    this.place = place;
    this.arrived += 1;
  }
}
