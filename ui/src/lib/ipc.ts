// The only file that talks to the shell: `program.ts`, or in a browser `web/shell.ts`, as the
// build chooses (`imports` in package.json). Every call resolves to the core's answer or rejects
// with a Problem. The window does not poll: the shell reports the progress of long work.

import { shell as own } from '#shell';
import type {
  CommandAnswer,
  AgainView,
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
  ViewAnswer,
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
  Wishes,
} from './types';

const { ask } = own;
export const { care, photoSource, onDropped } = own;

export const hello = () => ask<Hello>('hello');
export const shelf = () => ask<ShelfView>('shelf');
export const again = (id: string) => ask<AgainView>('again', { id });
export const photo = (id: string, dropped: boolean) => ask<string | null>('photo', { id, dropped });
export const view = (id: string, query: Query) => ask<ViewAnswer>('view', { id, query });
/** Executes a command; with `query`, the answer contains that view as it is afterwards. */
export const act = (id: string, request: Request, query: Query | null = null) =>
  ask<CommandAnswer>('act', { id, request, query });
export const shelfCommand = (command: ShelfCommand) =>
  ask<ShelfAnswer>('shelf_command', { command });
export const draft = (draft: PlanDraft, after: DraftAfter | null) =>
  ask<PlanView>('draft', { draft, after });
export const grids = (draft: PlanDraft, wish: GridWish) => ask<GridsView>('grids', { draft, wish });
/**
 * Search for layouts, and give up any other search; `report` hears what was found so far. Resolves
 * once the search has ended, by itself or because it was stopped.
 */
export const arrange = (
  id: string,
  wishes: Wishes,
  seed: number,
  report: (found: Layouts) => void,
) => ask<Layouts>('arrange', { id, wishes, seed }, report);
/** Stop the search; returns what it found, null if none was running. */
export const stopArranging = () => ask<Layouts | null>('stop_arranging');
/** A length as typed, in nanometres. */
export const length = (text: string) => ask<number>('length', { text });
export const setPrefs = (prefs: Prefs) => ask<Hello>('set_prefs', { prefs });

/** Resolves once the sheet is written, or was stopped; `report` hears how far it is. */
export const print = (id: string, order: PrintOrder, report: (now: Printing) => void) =>
  ask<Exported>('print', { id, order }, report);
export const stopPrinting = () => ask<null>('stop_printing');

/** Resolves once the file is written, or the maker has cancelled. */
export const save = (id: string, wanted: Export) => ask<Exported>('export', { id, export: wanted });

/** Asks for a throw file; null where the maker has cancelled. */
export const importFile = () => ask<ImportView | null>('import');
/** What came of a file dropped on the window. */
export const dropped = () => ask<ImportView | null>('dropped');
/** Do this with the file of that number. */
export const decideImport = (choice: ImportChoice, file: number) =>
  ask<Imported>('decide_import', { choice, file });

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
