// All shared state of the window, and the only road to the core.
//
// A deed is shown as done only after the core has answered: the screen is then
// looked at again. While an answer is under way the old view stays. Answers that
// come late, after a newer question, are dropped.

import * as ipc from './ipc';
import { east } from './dates';
import { setWords, t } from './words.svelte';
import type {
  Command,
  ImportView,
  Request,
  Denim,
  DraftAfter,
  GridWish,
  GridsView,
  Export,
  PrintOrder,
  Printing,
  Head,
  Hello,
  Lessons,
  Query,
  Mishap,
  PlanDraft,
  PlanView,
  Prefs,
  Print,
  Problem,
  Rect,
  ShelfView,
  ImportChoice,
  ShelfCommand,
  ShelfAnswer,
  View,
} from './types';

export type Tab = 'work' | 'faces' | 'bench' | 'plan' | 'history';
export const TABS: readonly Tab[] = ['work', 'faces', 'bench', 'plan', 'history'];

/** Which screen. */
export type Place =
  | { at: 'shelf' }
  | { at: 'new' }
  | { at: 'settings' }
  | { at: Tab }
  | { at: 'measure'; piece: Rect }
  | { at: 'trim' }
  | { at: 'off'; piece: Rect; why: Mishap | null }
  | { at: 'hold' }
  | { at: 'whole' }
  | { at: 'pile' }
  | { at: 'cutting'; n: number; index: number }
  | { at: 'gather' }
  | { at: 'scraps' }
  | { at: 'layouts' }
  | { at: 'floor' }
  | { at: 'covering' }
  | { at: 'hand-on' }
  | { at: 'story' };

/** Screens for one thing, opened from another of the throw's. */
export const APART: readonly Place['at'][] = [
  'measure',
  'trim',
  'off',
  'hold',
  'whole',
  'pile',
  'cutting',
  'gather',
  'scraps',
  'layouts',
  'floor',
  'covering',
  'hand-on',
  'story',
];

/** Something that can be taken back at once. */
export interface Second {
  text: string;
  label: string;
  run: () => void;
}

/** A new throw as typed so far. */
export interface NewThrow {
  name: string;
  draft: PlanDraft;
  prints: Print[];
  denims: Denim[];
  page: number;
  /** The throw it is made after, and what that taught. */
  after?: { id: string; lessons: Lessons | null };
}

interface Spot {
  place: Place;
  id: string | null;
  depth: number;
  /** Depth of the tab screen at or beneath this one. */
  tab: number | null;
}

/** Whether the batch that is looked at is through. */
const through = (look: Query, view: View) =>
  view.seen === 'work' && !view.card && !view.ask && look.see === 'work' && look.batch !== null;

const isTab = (place: Place) => (TABS as readonly string[]).includes(place.at);

/** How often the shell is asked how far a print is, in milliseconds. */
const PRINT_ASK = 150;
/** A tap is not heard twice within this time, in milliseconds. */
const SETTLE = 300;
const WIDE = '(min-width: 900px), (min-width: 640px) and (max-height: 520px)';

class Store {
  hello = $state.raw<Hello | null>(null);
  prefs = $state.raw<Prefs | null>(null);
  shelf = $state.raw<ShelfView | null>(null);
  /** The throw in hand. */
  id = $state.raw<string | null>(null);
  place = $state.raw<Place>({ at: 'shelf' });
  /** What was last asked of the throw. */
  look = $state.raw<Query | null>(null);
  view = $state.raw<View | null>(null);
  head = $state.raw<Head | null>(null);
  /** The fabrics of the throw in hand, as last seen; for pictures. */
  prints = $state.raw<Print[]>([]);
  problem = $state.raw<Problem | null>(null);
  /** The last announcement, for screen readers. */
  said = $state('');
  second = $state.raw<Second | null>(null);
  /** A throw file that was brought, until it is decided what becomes of it. */
  brought = $state.raw<ImportView | null>(null);
  /** How far the print in hand is. */
  printing = $state.raw<Printing | null>(null);
  /** What was last handed on, in words. */
  handed = $state.raw<string | null>(null);
  /** A deed is under way or has only just been done. */
  busy = $state(false);
  wide = $state(false);
  /** Counts screen changes, so that the focus can be moved. */
  arrived = $state(0);
  /** Lets a form write out its units before the ruler changes. */
  beforeRuler: (() => Promise<void>) | null = null;
  /** Lets a form read itself again after the ruler has changed. */
  afterRuler: (() => Promise<void>) | null = null;

  /** Plans typed but neither applied nor dropped, by throw. */
  readonly drafts: Partial<Record<string, PlanDraft>> = {};
  /** A new throw that was left for the settings. */
  begun: NewThrow | null = null;
  /** Where the window is bound for; a screen that goes may ask. */
  bound: Place['at'] = 'shelf';

  /** Takes a photo dropped on the window; set by the screen that can. */
  onphoto: (() => void) | null = null;

  private asked = 0;
  /** Questions not answered yet. */
  private waiting = 0;
  /** What was asked last, whether it is shown yet or not. */
  private wanted: Query | null = null;
  /** What becomes of it: whether it is shown. */
  private latest: Promise<boolean> = Promise.resolve(false);
  /** What is to be done once nothing else is. */
  private later: (() => void)[] = [];
  private going = 0;
  private depth = 0;
  private tab: number | null = null;
  /** Set while `leave` is on its way back through the history. */
  private landing: { to: Place | undefined; done: () => void } | null = null;

  async start() {
    const wide = matchMedia(WIDE);
    this.wide = wide.matches;
    wide.addEventListener('change', () => (this.wide = wide.matches));
    matchMedia('(prefers-color-scheme: dark)').addEventListener('change', () => this.dress());
    // The shell says so when it has looked into a file dropped on the window.
    window.addEventListener('lapwork-dropped', () =>
      this.onceFree(() => void this.bring(ipc.dropped)),
    );
    // And so when a photo was dropped: the sheet for notes takes it, or opens for it.
    window.addEventListener('lapwork-photo', () => this.onceFree(() => this.onphoto?.()));
    window.addEventListener('popstate', (event: PopStateEvent) => {
      const landing = this.landing;
      this.landing = null;
      const spot = event.state as Spot | null;
      this.depth = spot?.depth ?? 0;
      this.tab = spot?.tab ?? null;
      if (spot && landing?.to) history.replaceState({ ...spot, place: landing.to }, '');
      const place = (spot && landing?.to) ?? spot?.place ?? { at: 'shelf' };
      void this.arrive(place, spot?.id ?? null).then(landing?.done);
    });
    await this.greet();
  }

  /** Ask the core for words, preferences and the shelf. */
  async greet() {
    try {
      this.take(await ipc.hello());
      this.problem = this.hello?.problem ?? null;
    } catch (thrown) {
      this.fail(thrown);
    }
  }

  private take(hello: Hello) {
    setWords(hello.words, hello.language, hello.point);
    document.documentElement.lang = hello.language;
    this.hello = hello;
    this.prefs = hello.prefs;
    this.shelf = hello.shelf;
    this.dress();
  }

  /** Put the preferences on the page. */
  private dress() {
    const page = document.documentElement;
    const prefs = this.prefs;
    if (!prefs) return;
    const dark =
      prefs.theme === 'dark' ||
      (prefs.theme === 'auto' && matchMedia('(prefers-color-scheme: dark)').matches);
    page.dataset.theme = dark ? 'dark' : 'light';
    page.style.fontSize = `${prefs.text}%`;
    page.classList.toggle('large', prefs.text >= 140);
  }

  fail(thrown: unknown) {
    this.problem = ipc.problemOf(thrown) ?? {
      code: 'window',
      said: t('ui-broke'),
      next: t('ui-broke-next'),
    };
  }

  say(text: string) {
    // The same words twice would not be spoken twice.
    this.said = this.said === text ? `${text}\u00a0` : text;
  }

  // Places.

  /** Go to a screen; `over` takes the place of the present one. */
  async go(place: Place, id: string | null = this.id, over = false) {
    if (!over) this.depth += 1;
    if (isTab(place)) this.tab = this.depth;
    else if (id === null) this.tab = null;
    const spot: Spot = { place, id, depth: this.depth, tab: this.tab };
    if (over) history.replaceState(spot, '');
    else history.pushState(spot, '');
    await this.arrive(place, id);
  }

  /** Go back to where this screen was opened from. */
  back() {
    if (this.depth > 0) history.back();
    else void this.go({ at: 'shelf' }, null, true);
  }

  /**
   * Leave a side screen, with all that were opened from it, for the tab screen
   * beneath, or for `to` in its stead.
   */
  async leave(to?: Place) {
    if (this.tab === null || this.tab >= this.depth) {
      await this.go(to ?? { at: 'work' }, this.id, true);
      return;
    }
    const landed = new Promise<void>((done) => (this.landing = { to, done }));
    history.go(this.tab - this.depth);
    await landed;
  }

  /** To the shelf, from wherever this screen was opened. */
  async toShelf() {
    if (this.depth === 0) {
      await this.go({ at: 'shelf' }, null, true);
      return;
    }
    const landed = new Promise<void>((done) => (this.landing = { to: { at: 'shelf' }, done }));
    history.go(-this.depth);
    await landed;
  }

  async open(id: string) {
    await this.go({ at: 'work' }, id);
  }

  private async arrive(place: Place, id: string | null) {
    const mine = ++this.going;
    this.bound = place.at;
    this.second = null;
    this.handed = null;
    this.problem = null;
    if (place.at === 'shelf' || place.at === 'new') {
      this.id = null;
      this.look = null;
      this.wanted = null;
      // What was asked of the throw that was in hand is shown no more.
      this.asked += 1;
      this.latest = Promise.resolve(false);
      this.view = null;
      this.head = null;
      this.place = place;
      this.arrived += 1;
      await this.reshelve();
      return;
    }
    if (place.at === 'settings' || !id) {
      this.id = id;
      this.place = place;
      this.arrived += 1;
      return;
    }
    const look = firstLook(place, this.drafts[id] ?? null);
    const other = id !== this.id;
    this.id = id;
    if (other) {
      this.prints = [];
      this.view = null;
      this.head = null;
    }
    const seen = await this.see(look);
    // Another screen was asked for meanwhile.
    if (mine !== this.going) return;
    const problem = this.problem;
    if (!seen && problem && other && !this.view) {
      // It cannot be opened: stay on the shelf, with the problem shown.
      await this.go({ at: 'shelf' }, null, true);
      this.problem = problem;
      return;
    }
    if (!seen && problem && !isTab(place)) {
      // The piece is no more.
      await this.leave();
      this.problem = problem;
      return;
    }
    this.place = place;
    this.arrived += 1;
  }

  // Questions.

  /**
   * Look at something of the throw in hand; true when it is shown. An answer that a newer
   * question has overtaken is dropped: then it counts whether the newer one is shown.
   */
  see(look: Query): Promise<boolean> {
    this.wanted = look;
    this.latest = this.ask(look);
    return this.latest;
  }

  private async ask(look: Query): Promise<boolean> {
    const { id } = this;
    if (!id) return false;
    const mine = ++this.asked;
    this.waiting += 1;
    try {
      let view = await ipc.look(id, look);
      if (mine !== this.asked) return this.latest;
      if (look.see === 'work' && through(look, view)) {
        // Back to what comes first.
        look = { ...look, batch: null };
        view = await ipc.look(id, look);
        if (mine !== this.asked) return this.latest;
      }
      this.show(look, view);
      return true;
    } catch (thrown) {
      if (mine !== this.asked) return this.latest;
      this.wanted = this.look;
      this.fail(thrown);
      return false;
    } finally {
      this.waiting -= 1;
    }
  }

  private show(look: Query, view: View) {
    this.wanted = look;
    this.look = look;
    this.view = view;
    if (view.head) this.head = view.head;
    if ('prints' in view) this.prints = view.prints.map((swatch) => swatch.print);
  }

  async again() {
    if (this.wanted) await this.see(this.wanted);
  }

  async draft(draft: PlanDraft, after: DraftAfter | null): Promise<PlanView | null> {
    try {
      return await ipc.draft(draft, after);
    } catch (thrown) {
      this.fail(thrown);
      return null;
    }
  }

  async grids(draft: PlanDraft, wish: GridWish): Promise<GridsView | null> {
    try {
      return await ipc.grids(draft, wish);
    } catch (thrown) {
      this.fail(thrown);
      return null;
    }
  }

  /** A length as typed, for an action; or what is wrong with it. */
  async length(text: string): Promise<number | Problem> {
    try {
      return await ipc.length(text);
    } catch (thrown) {
      const problem = ipc.problemOf(thrown);
      if (problem) return problem;
      throw thrown;
    }
  }

  async reshelve() {
    try {
      this.shelf = await ipc.shelf();
    } catch (thrown) {
      this.fail(thrown);
    }
  }

  // Deeds.

  private async doing<T>(deed: () => Promise<T>, settle = SETTLE): Promise<T | null> {
    if (this.busy) return null;
    this.busy = true;
    this.problem = null;
    try {
      const answer = await deed();
      this.second = null;
      return answer;
    } catch (thrown) {
      this.fail(thrown);
      return null;
    } finally {
      setTimeout(() => {
        this.busy = false;
        for (const run of this.later.splice(0)) this.onceFree(run);
      }, settle);
    }
  }

  /** Do this now, or as soon as what is under way is done. */
  private onceFree(run: () => void) {
    if (this.busy) this.later.push(run);
    else run();
  }

  /** After a failure what counts is what is kept: read it anew, and still say what failed. */
  private async reread(read: () => Promise<void>) {
    const { problem } = this;
    await read();
    this.problem = problem ?? this.problem;
  }

  private async deed(deed: Request): Promise<boolean> {
    const { id, look } = this;
    if (!id || this.busy) return false;
    // Tapping undo several times in a row is meant; ticking twice is not.
    const once = deed.deed === 'act' && deed.action.do !== 'gather';
    const settle = once ? SETTLE : 0;
    const done = await this.doing(async () => {
      const { head, view, problem } = await ipc.act(id, deed, look);
      if (this.id !== id) return true;
      // How far the throw is and the screen come together: neither is ahead of the other.
      if (this.waiting || this.look !== look || (look && view && through(look, view))) {
        // Something else is asked for by now.
        await this.again();
      } else if (look && view) {
        this.show(look, view);
      } else {
        this.problem = problem;
      }
      if (this.id === id && this.head?.entry !== head.entry) this.head = head;
      return true;
    }, settle);
    if (!done) {
      if (this.id === id) await this.reread(() => this.again());
      return false;
    }
    // What the side screen was about may be gone.
    if (this.problem && !isTab(this.place)) await this.leave();
    return true;
  }

  /** A deed that ends a side screen: done, work goes on, and it can be taken back at once. */
  async settle(action: Command, said: string): Promise<boolean> {
    const { id, place } = this;
    if (!id || this.busy) return false;
    const done = await this.doing(() => ipc.act(id, { deed: 'act', action }));
    if (!done) {
      if (this.id === id) await this.reread(() => this.again());
      return false;
    }
    if (this.id === id) {
      this.head = done.head;
      if (this.place === place) await this.leave();
      else await this.again();
    }
    this.second = { text: said, label: t('ui-undo'), run: () => void this.undo() };
    return true;
  }

  act(action: Command): Promise<boolean> {
    return this.deed({ deed: 'act', action });
  }

  async undo() {
    const what = this.head?.undo;
    if (what && (await this.deed({ deed: 'undo' }))) this.say(`${t('ui-undone')}: ${what}`);
  }

  async redo() {
    const what = this.head?.redo;
    if (what && (await this.deed({ deed: 'redo' }))) this.say(`${t('ui-redone')}: ${what}`);
  }

  /** An action on a throw that lies on the shelf. */
  async actOn(id: string, action: Command): Promise<boolean> {
    if (this.busy) return false;
    const done = await this.doing(() => ipc.act(id, { deed: 'act', action }));
    await this.reread(() => this.reshelve());
    return done !== null;
  }

  async tend(tend: ShelfCommand): Promise<ShelfAnswer | null> {
    if (this.busy) return null;
    const tended = await this.doing(() => ipc.tend(tend));
    if (tended) this.shelf = tended.shelf;
    else await this.reread(() => this.reshelve());
    return tended;
  }

  /** Hand something on as a file; the shell asks where it goes. */
  async hand(hand: Export) {
    const { id } = this;
    if (!id) return;
    this.handed = null;
    const handed = await this.doing(() => ipc.hand(id, hand));
    if (!handed?.said || this.id !== id) return;
    this.handed = handed.said;
    this.say(handed.said);
  }

  /** Look at a throw file, one the maker chooses or another. */
  async bring(found: () => Promise<ImportView | null> = ipc.bring) {
    const view = await this.doing(found, 0);
    if (view) this.brought = view;
  }

  /** Do this with the file that was brought; the sheet stays if it cannot be done. */
  async decide(take: ImportChoice, file: number) {
    if (this.busy) return;
    const taken = await this.doing(() => ipc.take(take, file));
    if (!taken) {
      await this.reread(() => this.reshelve());
      return;
    }
    this.brought = null;
    this.shelf = taken.shelf;
    if (taken.id === null) {
      this.say(taken.said);
      return;
    }
    await this.go({ at: 'work' }, taken.id);
    const run = () => void this.go({ at: 'history' }, this.id, true);
    this.second = { text: taken.said, label: t('ui-history'), run };
    this.say(taken.said);
  }

  /** Print a sheet; it goes on while the maker works elsewhere. */
  async print(order: PrintOrder) {
    const { id } = this;
    if (!id || this.printing) return;
    this.handed = null;
    this.problem = null;
    this.printing = { done: 0, all: 1 };
    const asking = setInterval(() => {
      void ipc.printing().then((seen) => {
        if (seen && this.printing) this.printing = seen;
      });
    }, PRINT_ASK);
    try {
      const { said } = await ipc.print(id, order);
      if (said && this.id === id) this.handed = said;
      this.say(said ?? t('ui-print-stopped'));
    } catch (thrown) {
      this.fail(thrown);
    } finally {
      clearInterval(asking);
      this.printing = null;
    }
  }

  /** The print ends, and nothing is written. */
  async stopPrinting() {
    await ipc.stopPrinting();
  }

  /** Where the window finds a photo of the throw in hand. */
  photoSource(photo: string): string {
    return ipc.photoSource(this.id ?? '', photo);
  }

  /** A photo the maker chooses, or the one she dropped: its name, once the shell keeps it. */
  async photo(dropped: boolean): Promise<string | null> {
    const { id } = this;
    return id ? this.doing(() => ipc.photo(id, dropped), 0) : null;
  }

  /** Begin a throw after the plan of another. */
  async makeAgain(id: string) {
    const again = await this.doing(() => ipc.again(id));
    if (!again) return;
    const { lessons, ...given } = again;
    this.begun = { ...given, page: 0, after: { id, lessons } };
    await this.go({ at: 'new' }, null);
  }

  // Preferences.

  async setPrefs(prefs: Prefs) {
    const before = this.prefs;
    const same = (a: Prefs, b: Prefs) =>
      a.language === b.language && JSON.stringify(a.ruler) === JSON.stringify(b.ruler);
    // Lengths are written another way with another ruler, and in another language.
    const anew = before !== null && !same(before, prefs);
    if (anew) await this.beforeRuler?.();
    try {
      this.take(await ipc.setPrefs(prefs));
    } catch (thrown) {
      this.fail(thrown);
      return;
    }
    if (anew) {
      if (this.afterRuler) await this.afterRuler();
      else await this.again();
    }
  }
}

function firstLook(place: Place, draft: PlanDraft | null): Query {
  switch (place.at) {
    case 'bench':
      return { see: 'bench', chosen: null };
    case 'faces':
      return { see: 'faces', face: 'front' };
    case 'plan':
      return { see: 'plan', draft };
    case 'measure':
      return { see: 'measure', piece: place.piece, width: '', height: '' };
    case 'trim':
      return { see: 'trim' };
    case 'off':
      return { see: 'off', piece: place.piece, why: place.why };
    case 'hold':
      return { see: 'hold', width: '', height: '' };
    case 'whole':
      return { see: 'whole', width: '', height: '' };
    case 'pile':
    case 'gather':
    case 'covering':
    case 'hand-on':
      return { see: place.at };
    case 'layouts':
      return { see: 'wishes', wishes: null };
    case 'floor':
      return { see: 'floor', part: 0 };
    case 'cutting':
      return { see: 'cutting', n: place.n, index: place.index, typed: null, drag: null };
    case 'scraps':
      return { see: 'scraps', typed: null };
    case 'story':
      return { see: 'story', east: east() };
    case 'history':
      return { see: 'history', most: 200 };
    default:
      return { see: 'work', station: null, batch: null };
  }
}

export const store = new Store();
