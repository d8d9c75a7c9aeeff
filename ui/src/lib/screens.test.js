import assert from 'node:assert/strict';
import { beforeEach, describe, test } from 'node:test';
import { PROBLEM, Shell, Steps, settled, view } from '../../test/shell.js';
import { OpenThrow } from './open-throw.svelte';
import { Rooms, room } from './places';
import { Screens } from './screens.svelte';
import { Messages } from './messages.svelte';
import { Trail } from './trail';

const PIECE = [0, 4, 2, 2];

let shell;
let steps;
let messages;
let openThrow;
let rooms;
let screens;
let shelved;

describe('screens', () => {
  beforeEach(() => {
    shell = new Shell('view');
    steps = new Steps();
    shelved = 0;
    messages = new Messages((thrown) => (thrown.code ? thrown : null));
    openThrow = new OpenThrow(shell.view, (thrown) => messages.fail(thrown));
    rooms = new Rooms();
    rooms.set([
      room('work', () => ({ see: 'work', station: null, batch: null })),
      room('bench', () => ({ see: 'bench', chosen: null })),
      room('measure', ({ piece }) => ({ see: 'measure', piece, width: '', height: '' })),
      room('wishes', () => ({ see: 'wishes', wishes: null }), 'layouts'),
    ]);
    screens = new Screens(
      new Trail(steps),
      rooms,
      openThrow,
      messages,
      () => undefined,
      async () => {
        shelved += 1;
      },
    );
  });

  /** Be on the step screen of the throw `bay`. */
  async function working() {
    void screens.go({ at: 'work' }, 'bay');
    await shell.answer({ ...view('work', 1), card: {} });
  }

  test('a screen is shown together with the answer to its first question', async () => {
    const gone = screens.go({ at: 'work' }, 'bay');
    assert.equal(screens.place.at, 'shelf');
    assert.equal(screens.bound, 'work');
    const before = screens.arrived;
    await shell.answer({ ...view('work', 1), card: {} });
    await gone;
    assert.deepEqual([screens.place.at, openThrow.view.seen], ['work', 'work']);
    assert.equal(screens.arrived, before + 1, 'the focus is moved once');
  });

  test('a screen asks about what it is gone to for, whatever its view is called', async () => {
    await working();
    void screens.go({ at: 'measure', piece: PIECE });
    assert.deepEqual(shell.last.given, [
      'bay',
      { see: 'measure', piece: PIECE, width: '', height: '' },
    ]);
    await shell.answer(view('measure', 2));
    void screens.go({ at: 'layouts' });
    assert.equal(shell.last.given[1].see, 'wishes');
  });

  test('a journey that a newer one has overtaken shows nothing', async () => {
    await working();
    void screens.go({ at: 'bench' }, 'bay', true);
    void screens.go({ at: 'measure', piece: PIECE });
    await shell.answer(view('bench', 2));
    assert.equal(screens.place.at, 'work');
    await shell.answer(view('measure', 3));
    assert.equal(screens.place.at, 'measure');
  });

  test('the shelf and the settings wait for nothing; of the throw then nothing is shown', async () => {
    await working();
    void screens.go({ at: 'bench' });
    void screens.go({ at: 'settings' });
    assert.equal(screens.place.at, 'settings');
    assert.equal(openThrow.id, 'bay');
    void screens.go({ at: 'shelf' }, null);
    assert.deepEqual([screens.place.at, openThrow.id, openThrow.view], ['shelf', null, null]);
    await shell.answer(view('bench', 'late'));
    assert.deepEqual([screens.place.at, openThrow.view, shelved], ['shelf', null, 1]);
  });

  test('an answer that comes after the settings were gone to leads nowhere, nor does a failure', async () => {
    await working();
    for (const fails of [false, true]) {
      void screens.go({ at: 'measure', piece: PIECE });
      void screens.go({ at: 'settings' });
      if (fails) await shell.refuse(PROBLEM);
      else await shell.answer(view('measure', 2));
      assert.deepEqual([screens.place.at, screens.bound, steps.asked], ['settings', 'settings', 0]);
    }
  });

  test('a tab is come to even where its question fails, or was asked again meanwhile', async () => {
    await working();
    void screens.go({ at: 'bench' }, 'bay', true);
    await shell.refuse(PROBLEM);
    assert.deepEqual([screens.place.at, messages.problem], ['bench', PROBLEM]);
    void screens.go({ at: 'work' }, 'bay', true);
    void openThrow.again();
    await shell.answer(view('work', 1));
    await shell.answer({ ...view('work', 2), card: {} });
    assert.deepEqual([screens.place.at, openThrow.view.mark], ['work', 2]);
  });

  test('a throw that cannot be opened leads back to the shelf, with the problem shown', async () => {
    const gone = screens.go({ at: 'work' }, 'torn');
    await shell.refuse(PROBLEM);
    await gone;
    assert.equal(screens.place.at, 'shelf');
    assert.equal(messages.problem, PROBLEM);
    assert.equal(openThrow.id, null);
    assert.equal(steps.top.place.at, 'shelf');
  });

  test('a piece that is no more leads to the tab screen beneath, with the problem shown', async () => {
    await working();
    const gone = screens.go({ at: 'measure', piece: PIECE });
    await shell.refuse(PROBLEM);
    assert.equal(steps.asked, -1);
    void screens.popped(steps.pop());
    await shell.answer({ ...view('work', 2), card: {} });
    await gone;
    assert.equal(screens.place.at, 'work');
    assert.equal(messages.problem, PROBLEM);
  });

  test('a side screen is left, with all that were opened from it, once', async () => {
    await working();
    for (const n of [1, 2, 3]) {
      void screens.go({ at: 'measure', piece: [n, 0, 1, 1] });
      await shell.answer(view('measure', n));
    }
    const left = screens.leave({ at: 'bench' });
    const again = screens.leave();
    await settled();
    assert.equal(steps.asked, -3);
    void screens.popped(steps.pop());
    await settled();
    assert.equal(
      steps.asked,
      0,
      'the second finds itself on a tab screen and goes no further back',
    );
    // Each of the two asked for its screen; the newer one holds.
    while (shell.waiting.length) await shell.answer({ ...view('work', 9), card: {} });
    await Promise.all([left, again]);
    assert.equal(screens.place.at, 'work');
    assert.equal(steps.at, 1);
  });

  test('back leads where the screen was opened from; at the bottom, to the shelf', async () => {
    await working();
    screens.back();
    void screens.popped(steps.pop());
    await settled();
    assert.equal(screens.place.at, 'shelf');
    screens.back();
    await settled();
    assert.equal(steps.asked, 0);
    assert.equal(screens.place.at, 'shelf');
  });

  test('the shelf is come to from however deep', async () => {
    await working();
    void screens.go({ at: 'measure', piece: PIECE });
    await shell.answer(view('measure', 1));
    const gone = screens.toShelf();
    await settled();
    void screens.popped(steps.pop());
    await gone;
    assert.deepEqual([screens.place.at, steps.at], ['shelf', 0]);
  });

  test('screens that are still to be loaded are waited for, and loaded again after a failure', async () => {
    let loads = 0;
    const late = new Rooms();
    late.load = async () => {
      loads += 1;
      if (loads === 1) throw new Error('torn away');
      late.set([room('work', () => ({ see: 'work', station: null, batch: null }))]);
    };
    screens = new Screens(
      new Trail(steps),
      late,
      openThrow,
      messages,
      () => undefined,
      async () => undefined,
    );
    await screens.go({ at: 'work' }, 'bay');
    assert.equal(messages.problem.code, 'window');
    assert.equal(screens.place.at, 'shelf');
    const gone = screens.go({ at: 'work' }, 'bay');
    await settled();
    await shell.answer({ ...view('work', 1), card: {} });
    await gone;
    assert.deepEqual([screens.place.at, loads], ['work', 2]);
  });
});
