// The typed fields of a plan: their names, and their pages in a new throw.

import { t } from './words.svelte';
import type { PlanDraft, WordKey } from './types';

export type TypedField = Exclude<keyof PlanDraft, 'joining' | 'stitch' | 'order'>;

const LABELS: Record<TypedField, WordKey> = {
  side: 'ui-side',
  lap: 'ui-lap',
  across: 'ui-across',
  down: 'ui-down',
  width: 'ui-zigzag-width',
  fringe: 'ui-fringe',
  trim: 'ui-trim',
  between: 'ui-between',
  strip: 'ui-strip',
  longest: 'ui-longest',
  tail: 'ui-tail',
  cooling: 'ui-cooling-minutes',
  washes: 'ui-washes',
};

const SIZE: readonly string[] = ['name', 'side', 'across', 'down'];
const JOINING: readonly string[] = ['lap', 'width', 'fringe'];

/** A field's name, as it stands over it. */
export function labelOf(field: TypedField, draft: PlanDraft): string {
  if (field === 'lap' && draft.joining !== 'lapped') return t('ui-allowance');
  if (field === 'width' && draft.stitch === 'twin') return t('ui-twin-width');
  return t(LABELS[field]);
}

/** The page of a new throw a field is on. */
export const pageOf = (field: string) => (SIZE.includes(field) ? 0 : 1);

/** Whether it is among those folded away on its page. */
export const isFolded = (field: string) => !SIZE.includes(field) && !JOINING.includes(field);

export const isTyped = (field: string): field is TypedField => field in LABELS;
