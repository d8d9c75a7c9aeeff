// The only file that talks to the shell. Every call resolves to what the core
// says, or rejects with a Problem.

import { convertFileSrc, invoke } from '@tauri-apps/api/core';
import type {
  CommandAnswer,
  AgainView,
  Arrange,
  ImportView,
  Request,
  DraftAfter,
  GridWish,
  GridsView,
  Export,
  Exported,
  PrintOrder,
  Printing,
  Hello,
  Layouts,
  Query,
  PlanDraft,
  PlanView,
  Prefs,
  Problem,
  ShelfView,
  ImportChoice,
  Imported,
  ShelfCommand,
  ShelfAnswer,
  View,
} from './types';

export const hello = () => invoke<Hello>('hello');
export const shelf = () => invoke<ShelfView>('shelf');
export const again = (id: string) => invoke<AgainView>('again', { id });
export const photo = (id: string, dropped: boolean) =>
  invoke<string | null>('photo', { id, dropped });
/** Where the window finds a photo the shell keeps. */
export const photoSource = (id: string, photo: string) => convertFileSrc(`${id}/${photo}`, 'photo');
export const look = (id: string, look: Query) => invoke<View>('look', { id, look });
/** Do it; with `look`, see that of the throw as it is then. */
export const act = (id: string, deed: Request, look: Query | null = null) =>
  invoke<CommandAnswer>('act', { id, deed, look });
export const tend = (tend: ShelfCommand) => invoke<ShelfAnswer>('tend', { tend });
export const draft = (draft: PlanDraft, after: DraftAfter | null) =>
  invoke<PlanView>('draft', { draft, after });
export const grids = (draft: PlanDraft, wish: GridWish) =>
  invoke<GridsView>('grids', { draft, wish });
/** Begin, look at or stop the search for layouts; null where none was begun. */
export const arrange = (ask: Arrange) => invoke<Layouts | null>('arrange', { ask });
/** A length as typed, in nanometres. */
export const length = (text: string) => invoke<number>('length', { text });
export const setPrefs = (prefs: Prefs) => invoke<Hello>('set_prefs', { prefs });

/** Resolves once the file is written, or the maker has thought better of it. */
/** Resolves once the sheet is written, or was stopped. */
export const print = (id: string, order: PrintOrder) => invoke<Exported>('print', { id, order });
export const printing = () => invoke<Printing | null>('printing');
export const stopPrinting = () => invoke<null>('stop_printing');

export const hand = (id: string, hand: Export) => invoke<Exported>('hand', { id, hand });

/** Asks for a throw file; null where the maker has thought better of it. */
export const bring = () => invoke<ImportView | null>('bring');
/** What came of a file dropped on the window. */
export const dropped = () => invoke<ImportView | null>('dropped');
/** Do this with the file of that number. */
export const take = (take: ImportChoice, file: number) => invoke<Imported>('take', { take, file });

/** What was thrown, if it is a Problem of the core's. */
export function problemOf(thrown: unknown): Problem | null {
  if (typeof thrown === 'object' && thrown !== null) {
    const { code, said, next } = thrown as Record<string, unknown>;
    if (typeof code === 'string' && typeof said === 'string' && typeof next === 'string') {
      return { code, said, next };
    }
  }
  return null;
}
