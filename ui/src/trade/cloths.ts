// Prints and denims as drawn cloths.

import type { Denim, DrawnCloth, Print } from '../lib/types';
import { twillOf } from '../parts/tiles.svelte';

/** Of a print. */
export const printed = ({ colour, texture, photo }: Print): DrawnCloth => ({
  colour,
  photo,
  tile: texture === 'plain' ? null : texture,
});

/** Of the denim that is the nth in the list; some denim where there is none. */
export const bare = (denim: Denim | undefined, n: number): DrawnCloth => ({
  colour: denim?.colour ?? '#3a5788',
  tile: twillOf(n),
});
