// A plan that is being typed: it asks the core a moment after each change, and keeps the fields
// as the core reads them.

import type { TypedField } from './fields';
import { pauseAfter } from './typed';
import type { PlanDraft, PlanView } from './types';

export class Planning {
  draft: PlanDraft;
  view: PlanView | null;

  private asked = 0;
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor(
    draft: PlanDraft,
    view: PlanView | null,
    private readonly ask: (draft: PlanDraft) => Promise<PlanView | null>,
  ) {
    this.draft = $state({ ...draft });
    this.view = $state.raw(view);
  }

  /** Something was typed. */
  changed() {
    clearTimeout(this.timer);
    const texts = Object.values(this.draft).filter((text) => typeof text === 'string');
    this.timer = setTimeout(() => void this.now(), pauseAfter(texts));
  }

  /** Ask now; gives the answer if no newer question was asked meanwhile. */
  async now(): Promise<PlanView | null> {
    clearTimeout(this.timer);
    const mine = ++this.asked;
    const view = await this.ask({ ...this.draft });
    if (!view || mine !== this.asked) return null;
    this.view = view;
    return view;
  }

  /** A field was left: show what was read, its unit spelled out. */
  async left(field: TypedField) {
    const typed = this.draft[field];
    const view = await this.now();
    if (!view || this.fault(field) || this.draft[field] !== typed) return;
    this.draft[field] = view.tidy[field];
  }

  /** Spell every unit out: before the ruler changes, and by the new one afterwards. */
  async spell() {
    const view = await this.now();
    if (view) this.draft = { ...view.tidy };
  }

  fault(field: keyof PlanDraft) {
    return this.view?.faults.find((f) => f.field === field)?.problem ?? null;
  }

  stop() {
    clearTimeout(this.timer);
    this.asked += 1;
  }
}
