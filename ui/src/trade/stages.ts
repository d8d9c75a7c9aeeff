// A sign for each stage of a square, distinguished by its stitching. It is drawn in a cell of one
// by one, and is the same on the bench and in its key.

import type { SquareStage } from '../lib/types';

export interface StageSign {
  /** Outline of the cell that is filled. */
  fill: 'none' | 'paper' | 'pale' | 'denim' | 'deep';
  /** Solid strokes. */
  line: string;
  /** Stitched strokes. */
  sewn: string;
}

export const STAGES: Record<SquareStage, StageSign> = {
  open: { fill: 'none', line: '', sewn: '' },
  cut: { fill: 'paper', line: 'm.28 .72.44-.44', sewn: '' },
  ready: { fill: 'pale', line: 'm.5 .5h.001', sewn: '' },
  held: { fill: 'pale', line: 'm.5 .3h.001m-.001 .4h.001', sewn: '' },
  paired: { fill: 'denim', line: '', sewn: 'm.5 .14v.72' },
  blocked: { fill: 'denim', line: '', sewn: 'm.5 .14v.72m-.36-.36h.72' },
  squared: {
    fill: 'deep',
    line: 'm.7 .14h.16v.16m0 .4v.16h-.16m-.4 0h-.16v-.16',
    sewn: 'm.5 .14v.72m-.36-.36h.72',
  },
  joined: { fill: 'deep', line: '', sewn: 'm.09 .09h.82v.82h-.82zm.41 0v.82m-.41-.41h.82' },
};
