// Squares of one cloth as one path, so that a face of many squares is drawn quickly.

import type { Denim } from '../lib/types';

/** Drawn where a throw tells of no denim. */
const BARE: Denim = { name: '', colour: '#3a5788' };

/** The denims, of which there is always one. */
export const orBare = (denims: Denim[]) => (denims.length ? denims : [BARE]);

export interface Laid {
  x: number;
  y: number;
  print: number | null;
  denim: number;
  wrong_side: boolean;
}

/** For each cloth its name (`p` print, `d` denim, `w` its wrong side) and its squares. */
export function cloths(cells: Laid[], denims: number): [string, string][] {
  const paths: Record<string, string> = {};
  for (const { x, y, print, denim, wrong_side } of cells) {
    const bare = `${wrong_side ? 'w' : 'd'}${Math.min(denim, denims - 1)}`;
    const cloth = print === null ? bare : `p${print}`;
    paths[cloth] = `${paths[cloth] ?? ''}M${x} ${y}h1v1h-1z`;
  }
  return Object.entries(paths);
}

/** The edges between all squares. */
export const edges = (across: number, down: number) =>
  Array.from({ length: across + 1 }, (_, x) => `M${x} 0V${down}`).join('') +
  Array.from({ length: down + 1 }, (_, y) => `M0 ${y}H${across}`).join('');

/** An arrow with two heads along the lengthwise grain, about a point. */
export function grain(x: number, y: number, crosswise: boolean, long = 0.15): string {
  const head = long / 2.2;
  return crosswise
    ? `M${x - long} ${y}h${2 * long}m${-head} ${-head}l${head} ${head}-${head} ${head}` +
        `M${x - long + head} ${y - head}l-${head} ${head} ${head} ${head}`
    : `M${x} ${y - long}v${2 * long}m${-head} ${-head}l${head} ${head} ${head}-${head}` +
        `M${x - head} ${y - long + head}l${head}-${head} ${head} ${head}`;
}
