import assert from 'node:assert/strict';
import { beforeEach, describe, test } from 'node:test';
import { PROBLEM, Shell, head, view } from '../../test/shell.js';
import { OpenThrow } from './open-throw.svelte';

const BENCH = { see: 'bench', chosen: null };
const FACES = { see: 'faces', face: 'front' };
const TRIM = { see: 'trim' };
const WORK = { see: 'work', station: null, batch: null };

/** What a command answers that was the second entry. */
const acted = (view, problem = null) => ({ revision: 2, head: head(2), view, problem });

let shell;
let failed;
let openThrow;

describe('the open throw', () => {
  beforeEach(() => {
    shell = new Shell('view');
    failed = [];
    openThrow = new OpenThrow(shell.view, (thrown) => failed.push(thrown));
    openThrow.hold('bay');
  });

  test('a view stays until the answer to the next question has come', async () => {
    const seen = openThrow.see(BENCH);
    assert.deepEqual(shell.last.given, ['bay', BENCH]);
    await shell.answer(view('bench', 1));
    assert.equal(await seen, true);
    void openThrow.see(TRIM);
    assert.equal(openThrow.view.seen, 'bench');
    assert.equal(openThrow.query, BENCH);
    await shell.answer(view('trim', 2));
    assert.equal(openThrow.view.seen, 'trim');
  });

  test('an answer that a newer question has overtaken is dropped, whichever comes first', async () => {
    for (const newestFirst of [true, false]) {
      const older = openThrow.see(BENCH);
      const newer = openThrow.see(FACES);
      const [first, second] = shell.waiting;
      const answers = [
        () => shell.answer(view('bench', 'old'), first),
        () => shell.answer(view('faces', 'new'), second),
      ];
      for (const answer of newestFirst ? answers.reverse() : answers) await answer();
      assert.equal(openThrow.view.mark, 'new');
      assert.equal(await newer, true);
      assert.equal(await older, true, 'what was asked since is shown');
    }
  });

  test('an older question learns when the newer one fails', async () => {
    void openThrow.see(TRIM);
    await shell.answer(view('trim', 'kept'));
    const older = openThrow.see(BENCH);
    const newer = openThrow.see(FACES);
    const [first, second] = shell.waiting;
    await shell.answer(view('bench', 'old'), first);
    await shell.refuse(PROBLEM, second);
    assert.deepEqual([await older, await newer], [false, false]);
    assert.equal(openThrow.view.mark, 'kept');
    assert.deepEqual(failed, [PROBLEM]);
  });

  test('the failure of an overtaken question is not reported', async () => {
    void openThrow.see(BENCH);
    void openThrow.see(FACES);
    await shell.refuse(PROBLEM);
    await shell.answer(view('faces', 1));
    assert.deepEqual(failed, []);
    assert.equal(openThrow.view.seen, 'faces');
  });

  test('what was asked last is asked again, shown or not; after a failure what is shown', async () => {
    void openThrow.see(BENCH);
    void openThrow.again();
    assert.deepEqual(
      shell.waiting.map((call) => call.given[1].see),
      ['bench', 'bench'],
    );
    await shell.answer(view('bench', 'first'));
    assert.equal(openThrow.view, null, 'the first is overtaken');
    await shell.answer(view('bench', 'second'));
    void openThrow.see(FACES);
    await shell.refuse(PROBLEM);
    void openThrow.again();
    assert.equal(shell.last.given[1], BENCH);
  });

  test('of a throw that is no longer open nothing is shown', async () => {
    let shown = 0;
    const seen = openThrow.see(BENCH, () => (shown += 1));
    assert.equal(openThrow.hold('bay'), false);
    assert.equal(openThrow.hold('sill'), true);
    await shell.answer(view('bench', 1));
    assert.equal(await seen, false);
    assert.equal(openThrow.view, null);
    assert.equal(shown, 0);
    await openThrow.again();
    assert.equal(shell.waiting.length, 0, 'nothing was asked of the other one');
    openThrow.hold(null);
    assert.equal(await openThrow.see(BENCH), false);
  });

  test('what is told before a view is shown comes just before it, and only for the newest', async () => {
    const log = [];
    const noted = (what) => () => log.push([what, openThrow.view?.mark ?? null]);
    void openThrow.see(BENCH, noted('bench'));
    void openThrow.see(FACES, noted('faces'));
    await shell.answer(view('bench', 'old'));
    await shell.answer(view('faces', 'new'));
    assert.deepEqual(log, [['faces', null]]);
  });

  test('a batch that is through gives way to what comes first', async () => {
    const batch = { ...WORK, batch: ['cut', 'square'] };
    void openThrow.see(batch);
    await shell.answer({ ...view('work', 'through'), card: null, ask: null });
    assert.equal(openThrow.view, null);
    assert.deepEqual(shell.last.given[1], WORK);
    await shell.answer({ ...view('work', 'first'), card: { title: 'Cut' } });
    assert.equal(openThrow.view.mark, 'first');
    assert.deepEqual(openThrow.query, WORK);
  });

  test('a command shows its answer with how far the throw is', async () => {
    void openThrow.see(BENCH);
    await shell.answer(view('bench', 'before', 1));
    await openThrow.follow(BENCH, acted(view('bench', 'after', 2)));
    assert.equal(openThrow.view.mark, 'after');
    assert.equal(openThrow.head.entry, 2);
    assert.equal(shell.waiting.length, 0, 'one call was enough');
  });

  test('a command is shown at once while another screen is made, which is asked again', async () => {
    void openThrow.see(BENCH);
    await shell.answer(view('bench', 'before', 1));
    const faces = openThrow.see(FACES);
    await openThrow.follow(BENCH, acted(view('bench', 'after', 2)));
    assert.equal(openThrow.view.mark, 'after', 'it does not wait for the faces');
    assert.equal(openThrow.head.entry, 2);
    const [asked, again] = shell.waiting;
    assert.deepEqual(again.given, ['bay', FACES]);
    await shell.answer(view('faces', 'before the command', 1), asked);
    assert.equal(openThrow.view.mark, 'after');
    await shell.answer(view('faces', 'after the command', 2), again);
    assert.equal(await faces, true);
    assert.equal(openThrow.view.mark, 'after the command');
    assert.equal(openThrow.head.entry, 2);
  });

  test('an answer from before a command that has been answered is dropped and asked again', async () => {
    void openThrow.see(BENCH);
    await shell.answer(view('bench', 'before', 1));
    const faces = openThrow.see(FACES);
    openThrow.heed(acted(null));
    await shell.answer(view('faces', 'before the command', 1));
    assert.equal(openThrow.view.mark, 'before');
    assert.equal(openThrow.head.entry, 2, 'how far the throw is does not go back');
    assert.deepEqual(shell.last.given, ['bay', FACES]);
    await shell.answer(view('faces', 'after the command', 2));
    assert.equal(await faces, true);
    assert.equal(openThrow.view.mark, 'after the command');
  });

  test('a command that leaves nothing to look at tells why', async () => {
    void openThrow.see(BENCH);
    await shell.answer(view('bench', 'before', 1));
    await openThrow.follow(BENCH, acted(null, PROBLEM));
    assert.deepEqual(failed, [PROBLEM]);
    assert.equal(openThrow.view.mark, 'before');
    assert.equal(openThrow.head.entry, 2, 'the command is done all the same');
  });
});
