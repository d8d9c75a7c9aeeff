// All throws, and the commands that begin, put away, delete, import or merge them.
//
// The shelf shown is the latest one that the core sent. Each command returns the updated shelf or
// has it read again, also after a failure, and the problem stays visible. Where there are many
// throws, the core sends the shelf before all are read, and the rows fill in. An imported file stays
// until the maker has decided what becomes of it.

import type { OpenThrow } from './open-throw.svelte';
import type * as ipc from './ipc';
import type { Screens } from './screens.svelte';
import type { Messages } from './messages.svelte';
import type { Turns } from './turns.svelte';
import type {
  Command,
  ImportView,
  Denim,
  Lessons,
  PlanDraft,
  Print,
  ShelfView,
  ImportChoice,
  ShelfCommand,
  ShelfAnswer,
} from './types';
import type { ClothAtHand } from './cloth';
import { t } from './words.svelte';

/** A new throw as typed so far. */
export interface NewThrow {
  name: string;
  draft: PlanDraft;
  prints: Print[];
  denims: Denim[];
  page: number;
  /** What she said she has. */
  cloth?: ClothAtHand;
  /** It was left and come back to: what it began with, as JSON. */
  kept?: string;
  /** The throw it is made after, and what that taught. */
  after?: { id: string; lessons: Lessons | null };
}

type Shell = Pick<
  typeof ipc,
  'shelf' | 'act' | 'shelfCommand' | 'again' | 'importFile' | 'dropped' | 'decideImport' | 'save'
>;

/** Whether throws of this shelf are still unread. */
const isPartial = (view: ShelfView) => [...view.rows, ...view.deleted].some((row) => row.unread);

export class Shelf {
  view = $state.raw<ShelfView | null>(null);
  /** A throw file that was imported, until it is decided what becomes of it. */
  imported = $state.raw<ImportView | null>(null);
  /** The rest of the shelf is being asked for. */
  private readingOn = false;
  /** A new throw that is made after another, or was left before it was begun. */
  begun: NewThrow | null = null;

  constructor(
    private readonly shell: Shell,
    private readonly turns: Turns,
    private readonly openThrow: OpenThrow,
    private readonly screens: Screens,
    private readonly messages: Messages,
  ) {}

  /** Show the shelf as the core sent it. It is asked for again while throws are still unread. */
  show(view: ShelfView) {
    this.view = view;
    if (isPartial(view) && !this.readingOn) void this.readOn();
  }

  private async readOn() {
    this.readingOn = true;
    try {
      while (this.view && isPartial(this.view)) this.view = await this.shell.shelf();
    } catch (thrown) {
      this.messages.fail(thrown);
    } finally {
      this.readingOn = false;
    }
  }

  /** Read the shelf anew. */
  async reread() {
    try {
      this.show(await this.shell.shelf());
    } catch (thrown) {
      this.messages.fail(thrown);
    }
  }

  async open(id: string) {
    await this.screens.go({ at: 'work' }, id);
  }

  /** An action on a throw that lies on the shelf. */
  async actOn(id: string, action: Command): Promise<boolean> {
    const done = await this.turns.run(() => this.shell.act(id, { request: 'act', action }));
    if (done.is !== 'busy') await this.messages.keeping(() => this.reread());
    return done.is === 'done';
  }

  async run(command: ShelfCommand): Promise<ShelfAnswer | null> {
    const done = await this.turns.run(() => this.shell.shelfCommand(command));
    if (done.is === 'done') {
      this.show(done.answer.shelf);
      return done.answer;
    }
    if (done.is === 'failed') await this.messages.keeping(() => this.reread());
    return null;
  }

  /** Save a copy of a throw outside the shelf. */
  async saveCopy(id: string) {
    const done = await this.turns.run(() => this.shell.save(id, { export: 'throw' }));
    if (done.is !== 'done' || !done.answer.said) return;
    this.messages.say(done.answer.said);
    await this.reread();
  }

  /** Begin a throw after the plan of another. */
  async makeAgain(id: string) {
    const done = await this.turns.run(() => this.shell.again(id));
    if (done.is !== 'done') return;
    const { lessons, ...given } = done.answer;
    this.begun = { ...given, page: 0, after: { id, lessons } };
    await this.screens.go({ at: 'new' }, null);
  }

  /** Have the maker choose a throw file, and look into it. */
  importFile() {
    return this.inspect(() => this.shell.importFile());
  }

  /** A file was dropped on the window: look into it as soon as nothing else is running. */
  dropped() {
    this.turns.whenFree(() => void this.inspect(() => this.shell.dropped()));
  }

  /** Do this with the file that was imported; the sheet stays if it cannot be done. */
  async decide(choice: ImportChoice, file: number) {
    const done = await this.turns.run(() => this.shell.decideImport(choice, file));
    if (done.is === 'failed') await this.messages.keeping(() => this.reread());
    if (done.is !== 'done') return;
    const { said, id, shelf } = done.answer;
    this.imported = null;
    this.show(shelf);
    if (id !== null) {
      await this.screens.go({ at: 'work' }, id);
      const show = () => void this.screens.go({ at: 'history' }, this.openThrow.id, true);
      this.messages.offer(said, t('ui-history'), show);
    }
    this.messages.say(said);
  }

  private async inspect(file: () => Promise<ImportView | null>) {
    const done = await this.turns.run(file, 0);
    if (done.is === 'done' && done.answer) this.imported = done.answer;
  }
}
