// Text in fields before the core has read it.

import type { PlanDraft, Ruler } from './types';
import { t } from './words.svelte';

/** The sign of the unit a bare number is read in. */
export function unit(ruler: Ruler): 'in' | 'mm' | 'cm' {
  return ruler.system === 'inch' ? 'in' : ruler.metric;
}

/** A bare number with its unit written out, so that changing the ruler cannot change it. */
export function spelledOut(text: string, ruler: Ruler): string {
  const bare = text.trim();
  const written = bare === '' || /[\p{L}"'′″”’]/u.test(bare);
  return written ? text : `${bare} ${t(`ui-unit-${unit(ruler)}`)}`;
}

/** A figure that goes on, such as `24.` or `9 1/`: nobody wants to be told that it cannot be read. */
const GOES_ON = /\d\s*[.,/⁄-]\s*$/u;

/** How long after the last key the core is asked about these texts, in milliseconds. */
export function pauseAfter(texts: string[]): number {
  return texts.some((text) => GOES_ON.test(text)) ? 1500 : 80;
}

const MEASURES = [
  'side',
  'lap',
  'width',
  'fringe',
  'trim',
  'between',
  'strip',
  'longest',
  'tail',
] as const satisfies (keyof PlanDraft)[];

/** A draft of which every bare measure has its unit written out. */
export function draftSpelledOut(draft: PlanDraft, ruler: Ruler): PlanDraft {
  const spelled = { ...draft };
  for (const field of MEASURES) spelled[field] = spelledOut(draft[field], ruler);
  return spelled;
}

/** A whole number as typed, if it is one. */
export function whole(text: string): number | null {
  const bare = text.trim();
  return /^\d{1,5}$/.test(bare) ? Number(bare) : null;
}
