// What she says she has before a throw is begun, and what of it is put on its pile.

import { whole } from './typed';
import type {
  ClothOffer,
  Command,
  GarmentKind,
  GarmentSize,
  GridWish,
  Knees,
  Problem,
  StartOffers,
  System,
} from './types';

/** What she says she has before a throw is begun, and the size she wishes for. */
export interface ClothAtHand {
  jeans: {
    pairs: string;
    kind: GarmentKind;
    size: GarmentSize | 'later';
    knees: Knees;
    /** Which denim, counted from 0. */
    denim: number;
  }[];
  fabric: 'later' | 'pack' | 'quarters';
  side: string;
  count: string;
  /** Each square of the pack is another. */
  mixed: boolean;
  /** Which fabric, counted from 0. */
  print: number;
  width: string;
  height: string;
}

/** What the core is asked of it; nothing while nothing is said. */
export function wishOf(cloth: ClothAtHand): GridWish | null {
  const { jeans, fabric, side, count, width, height } = cloth;
  const some = jeans.some((row) => whole(row.pairs));
  const wished = width.trim() !== '' && height.trim() !== '';
  const pack =
    fabric === 'pack' && side.trim() && whole(count) ? { side, count: whole(count)! } : null;
  if (!some && !wished && !pack) return null;
  return {
    by: 'cloth',
    jeans: jeans.map(({ pairs, kind, size, knees }) => ({
      pairs: whole(pairs) ?? 0,
      kind,
      size: size === 'later' ? null : size,
      knees,
    })),
    pack,
    width,
    height,
  };
}

/**
 * The fabrics and denims she has of those that are offered, with what she says she has of them;
 * all of them where she has not said what she has.
 */
export function ofThoseOffered<P, D>(
  cloth: ClothAtHand,
  prints: P[],
  denims: D[],
): { cloth: ClothAtHand; prints: P[]; denims: D[] } {
  const has = cloth.fabric !== 'later' && whole(cloth.count) && prints[cloth.print] !== undefined;
  const rows = cloth.jeans.filter((row) => whole(row.pairs) && denims[row.denim] !== undefined);
  const used = denims.map((_, d) => d).filter((d) => rows.some((row) => row.denim === d));
  const kept = used.length ? used : denims.map((_, d) => d);
  return {
    cloth: {
      ...cloth,
      print: has ? 0 : cloth.print,
      jeans: cloth.jeans.map((row) => ({ ...row, denim: Math.max(0, kept.indexOf(row.denim)) })),
    },
    prints: has ? [prints[cloth.print]] : prints,
    denims: kept.map((d) => denims[d]),
  };
}

/** Nothing said yet. */
export const nothingYet = (side: string): ClothAtHand => ({
  jeans: [{ pairs: '0', kind: 'mens-jeans', size: 'medium', knees: 'unknown', denim: 0 }],
  fabric: 'later',
  side,
  count: '',
  mixed: false,
  print: 0,
  width: '',
  height: '',
});

/** Reads a length as typed, or says what is wrong with it. */
type Read = (text: string) => Promise<number | Problem>;

/** The garments, each by its kind, numbered where there are several. */
function garments(cloth: ClothAtHand, offers: StartOffers, system: System): Command[] {
  const named = (kind: GarmentKind) => offers.jeans.find((o) => o.value === kind)?.label ?? kind;
  const rows = cloth.jeans.map((row) => ({ ...row, pairs: whole(row.pairs) ?? 0 }));
  const all = rows.flatMap((row) => Array.from({ length: row.pairs }, () => row));
  return all.map(({ kind, size, knees, denim }, n) => {
    const alike = all.filter((other) => other.kind === kind).length > 1;
    const nth = all.slice(0, n + 1).filter((other) => other.kind === kind).length;
    return {
      do: 'add-garment',
      kind,
      ...(size === 'later' ? {} : { size }),
      knees,
      system,
      makes: { for: 'denim', denim },
      name: alike ? `${named(kind)} ${nth}` : named(kind),
    };
  });
}

async function quarters(
  offer: ClothOffer,
  read: Read,
): Promise<Omit<Extract<Command, { do: 'add-cloth' }>, 'makes' | 'name'> | Problem> {
  const found: number[] = [];
  for (const text of [offer.width, offer.length, offer.cut, offer.selvedge]) {
    const length = await read(text);
    if (typeof length !== 'number') return length;
    found.push(length);
  }
  const [width, length, cut, selvedge] = found;
  return { do: 'add-cloth', width, length, edges: { cut, selvedge, selvedges: offer.selvedges } };
}

/** What is put on the pile, or what is wrong with what was typed. */
export async function heapsOf(
  cloth: ClothAtHand,
  offers: StartOffers,
  system: System,
  words: { pack: string },
  read: Read,
): Promise<Command[] | Problem> {
  const heaps = garments(cloth, offers, system);
  const count = whole(cloth.count) ?? 0;
  const makes = { for: 'fabric', print: cloth.print } as const;
  if (cloth.fabric === 'pack' && count) {
    const side = await read(cloth.side);
    if (typeof side !== 'number') return side;
    const { mixed } = cloth;
    heaps.push({ do: 'add-pack', side, count, makes, mixed, name: words.pack });
  }
  if (cloth.fabric === 'quarters' && count) {
    const offer = offers.cloths[0];
    const one = await quarters(offer, read);
    if ('code' in one) return one;
    for (let n = 1; n <= Math.min(count, 40); n++) {
      const name = count > 1 ? `${offer.label} ${n}` : offer.label;
      heaps.push({ ...one, makes, name });
    }
  }
  return heaps;
}
