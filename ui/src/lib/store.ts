// The store assembles the modules that hold the window's state.
//
// Screens use what is exported here and nothing else of the shell's. Change flows in one
// direction: a screen asks, the module asks the core, and the core's answer is shown. Only this
// module creates the others; each receives what it works with in its constructor, so that a test
// can assemble it with a shell of its own.

import { Aloud } from './aloud.svelte';
import { Arranging } from './arranging.svelte';
import { backs } from './backs';
import { Commands } from './commands.svelte';
import { Exporting } from './exporting.svelte';
import { OpenThrow } from './open-throw.svelte';
import * as ipc from './ipc';
import { Page } from './page.svelte';
import { Rooms } from './places';
import { Preferences } from './preferences.svelte';
import { Reading } from './reading';
import { Screens } from './screens.svelte';
import { Shelf } from './shelf.svelte';
import { Messages } from './messages.svelte';
import { Trail } from './trail';
import { Turns } from './turns.svelte';
import { setWords } from './words.svelte';

/** What the maker is to see to, if the shell is a browser. */
export const { care } = ipc;
export const aloud = new Aloud(
  () => window.speechSynthesis,
  (text) => new SpeechSynthesisUtterance(text),
);
export const page = new Page();
export const rooms = new Rooms();
export const messages = new Messages(ipc.problemOf);
const turns = new Turns(messages);
export const openThrow = new OpenThrow(ipc.view, (thrown) => messages.fail(thrown));
export const exporting = new Exporting(ipc, turns, openThrow, messages);
const trail = new Trail(history);
export const screens: Screens = new Screens(
  trail,
  rooms,
  openThrow,
  messages,
  () => exporting.forget(),
  () => shelf.reread(),
);
export const commands = new Commands(ipc, turns, openThrow, screens, messages);
export const shelf: Shelf = new Shelf(ipc, turns, openThrow, screens, messages);
export const reading = new Reading(ipc, messages);
/** A search for layouts, as long as its screen is there. */
export const arranging = () => new Arranging(ipc, openThrow, messages);
export const preferences = new Preferences(
  ipc,
  messages,
  (hello) => {
    setWords(hello.words, hello.language, hello.point);
    shelf.show(hello.shelf);
    page.wear(hello.prefs, hello.language);
  },
  () => openThrow.again(),
);

/** Begin: follow the window and its history, hear what is dropped on it, and greet the core. */
export async function start() {
  page.begin();
  /** An open sheet is closed by a step back. */
  const closed = () => {
    const sheet = [...document.querySelectorAll('dialog:modal')].at(-1);
    return sheet?.dispatchEvent(new Event('cancel', { cancelable: true })) !== undefined;
  };
  /** The history was moved back although the screen stays: it is on its way forward again. */
  let restoring = false;
  window.addEventListener('popstate', (event) => {
    if (restoring) {
      restoring = false;
    } else if (trail.isResting && trail.isBelow(event.state) && (closed() || backs.take())) {
      restoring = true;
      history.forward();
    } else {
      void screens.popped(event.state);
    }
  });
  ipc.onDropped(
    () => shelf.dropped(),
    () => exporting.dropped(),
  );
  await preferences.greet();
}
