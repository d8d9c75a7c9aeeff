// The textures of cloth and the hatchings, as the core sent them.

import type { Tile, TileMarks } from '../lib/types';

let tiles = $state.raw<Partial<Record<Tile, TileMarks>>>({});
let twills = $state.raw<Tile[]>([]);

/** Take them over, with the twills in the order denims have them. */
export function setTiles(given: TileMarks[], ofDenims: Tile[]) {
  tiles = Object.fromEntries(given.map((marks) => [marks.tile, marks]));
  twills = ofDenims;
}

/** The marks of a tile. */
export const tileOf = (tile: Tile) => tiles[tile];

/** The texture of the denim that is the nth in the list. */
export const twillOf = (n: number): Tile | null => twills[n % twills.length] ?? null;
