// The typed fields of a plan: their names, and their pages in a new throw.

import { t } from './words.svelte';
import type { PlanDraft, StitchKind, WordKey } from './types';

export type TypedField = Exclude<
  keyof PlanDraft,
  'joining' | 'stitch' | 'order' | 'trim_edge' | 'stitch_in_seam'
>;

const LABELS: Record<TypedField, WordKey> = {
  side: 'ui-side',
  lap: 'ui-lap',
  across: 'ui-across',
  down: 'ui-down',
  width: 'ui-zigzag-width',
  stitch_length: 'ui-stitch-length',
  fringe: 'ui-fringe',
  trim: 'ui-trim',
  between: 'ui-between',
  strip: 'ui-strip',
  longest: 'ui-longest',
  tail: 'ui-tail',
  cooling: 'ui-cooling-minutes',
  washes: 'ui-washes',
};

const SIZE: readonly string[] = ['name', 'fabric-count', 'fabric-side', 'side', 'across', 'down'];
const JOINING: readonly string[] = ['lap', 'width', 'stitch_length', 'fringe'];

const WIDTHS: Record<StitchKind, WordKey> = {
  straight: 'ui-zigzag-width',
  twin: 'ui-twin-width',
  'two-rows': 'ui-rows-apart',
  zigzag: 'ui-zigzag-width',
};

/** What the width of a stitch is called: a spacing, a distance of rows, or a width. */
export const labelOfWidth = (stitch: StitchKind) => t(WIDTHS[stitch]);

/** What helps to type it. */
export function hintOfWidth(stitch: StitchKind): string | undefined {
  if (stitch === 'twin') return t('ui-twin-hint');
  if (stitch === 'two-rows') return t('ui-rows-apart-hint');
  return undefined;
}

/** A field's name, as it stands over it. */
export function labelOf(field: TypedField, draft: PlanDraft): string {
  if (field === 'lap' && draft.joining !== 'lapped') return t('ui-allowance');
  if (field === 'width') return labelOfWidth(draft.stitch);
  return t(LABELS[field]);
}

/** The page of a new throw a field is on. */
export const pageOf = (field: string) => (SIZE.includes(field) ? 0 : 1);

/** Whether it is among those folded away on its page. */
export const isFolded = (field: string) => !SIZE.includes(field) && !JOINING.includes(field);

export const isTyped = (field: string): field is TypedField => field in LABELS;
