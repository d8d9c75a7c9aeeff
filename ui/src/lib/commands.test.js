import assert from 'node:assert/strict';
import { beforeEach, describe, mock, test } from 'node:test';
import { PROBLEM, Shell, Steps, head, settled, view } from '../../test/shell.js';
import { Commands } from './commands.svelte';
import { OpenThrow } from './open-throw.svelte';
import { Rooms, room } from './places';
import { Screens } from './screens.svelte';
import { Messages } from './messages.svelte';
import { Trail } from './trail';
import { Turns } from './turns.svelte';
import { setWords } from './words.svelte';

const WORK = { see: 'work', station: null, batch: null };
const PIECE = [0, 4, 2, 2];
const TICK = { do: 'note', text: 'done' };

let shell;
let steps;
let messages;
let openThrow;
let screens;
let commands;

const work = (mark, entry) => ({ ...view('work', mark, entry), card: {} });

describe('commands', () => {
  beforeEach(async () => {
    mock.timers.reset();
    mock.timers.enable({ apis: ['setTimeout'] });
    setWords({ 'ui-undo': 'Undo', 'ui-undone': 'Undone' }, 'en', '.');
    shell = new Shell('view', 'act');
    steps = new Steps();
    messages = new Messages((thrown) => (thrown.code ? thrown : null));
    openThrow = new OpenThrow(shell.view, (thrown) => messages.fail(thrown));
    const rooms = new Rooms();
    rooms.set([
      room('work', () => WORK),
      room('measure', ({ piece }) => ({ see: 'measure', piece, width: '', height: '' })),
    ]);
    const shelved = async () => undefined;
    screens = new Screens(new Trail(steps), rooms, openThrow, messages, () => undefined, shelved);
    commands = new Commands(shell, new Turns(messages), openThrow, screens, messages);
    void screens.go({ at: 'work' }, 'bay');
    await shell.answer(work('before', 1));
  });

  const acted = (mark, entry, problem = null) => ({
    revision: entry,
    head: head(entry),
    view: mark === null ? null : work(mark, entry),
    problem,
  });

  test('a tick is one call: its answer brings the screen, and nothing is shown before it', async () => {
    const done = commands.act(TICK);
    assert.deepEqual(shell.last.given, ['bay', { request: 'act', action: TICK }, WORK]);
    assert.equal(openThrow.view.mark, 'before');
    await shell.answer(acted('after', 2));
    assert.equal(await done, true);
    assert.equal(openThrow.view.mark, 'after');
    assert.equal(shell.waiting.length, 0);
  });

  test('a tick tapped twice is done once', async () => {
    const first = commands.act(TICK);
    assert.equal(await commands.act(TICK), false);
    assert.equal(shell.waiting.length, 1);
    await shell.answer(acted('after', 2));
    assert.equal(await first, true);
    assert.equal(await commands.act(TICK), false, 'the second tap may come a little later');
    mock.timers.tick(300);
    void commands.act(TICK);
    assert.equal(shell.waiting.length, 1);
  });

  test('a measure kept just after a tick waits for its turn and is not lost', async () => {
    const measure = { do: 'measure', block: PIECE, width: 1, height: 1 };
    const tick = commands.act(TICK);
    const kept = commands.inTurn(measure);
    assert.equal(shell.waiting.length, 1, 'the tick alone is under way');
    await shell.answer(acted('after', 2));
    await tick;
    assert.equal(shell.waiting.length, 0, 'a tap is not heard twice, and the measure waits');
    mock.timers.tick(300);
    await settled();
    assert.deepEqual(shell.last.given[1], { request: 'act', action: measure });
    await shell.answer(acted('measured', 3));
    assert.equal(await kept, true);
  });

  test('undo is heard as often as it is tapped, and said', async () => {
    for (const entry of [2, 3]) {
      openThrow.head = head(entry - 1, { undo: `step ${entry}` });
      const done = commands.undo();
      await shell.answer(acted('undone', entry));
      await done;
      assert.equal(messages.second.text, `Undone: step ${entry}`);
      mock.timers.tick(1);
    }
    openThrow.head = head(3);
    await commands.undo();
    assert.equal(shell.waiting.length, 0, 'there is nothing to undo');
    // What was undone can be done again from where that is said.
    openThrow.head = head(3, { redo: 'step 3' });
    messages.second.run();
    assert.deepEqual(shell.last.given[1], { request: 'redo' });
    await shell.answer(acted('redone', 4));
  });

  test('after a failure what is kept is read anew, and what failed stays shown', async () => {
    const done = commands.act(TICK);
    await shell.refuse(PROBLEM);
    assert.deepEqual(shell.last.given, ['bay', WORK]);
    await shell.answer(work('kept', 1));
    assert.equal(await done, false);
    assert.equal(openThrow.view.mark, 'kept');
    assert.equal(messages.problem, PROBLEM);
  });

  test('what is asked while a command is under way is asked again once it is done', async () => {
    const done = commands.act(TICK);
    void openThrow.see({ ...WORK, station: 'iron' });
    const [act, query] = shell.waiting;
    await shell.answer(acted('after', 2), act);
    assert.equal(openThrow.view.mark, 'after', 'the tick does not wait for what takes long');
    await shell.answer(work('before the command', 1), query);
    assert.equal(openThrow.view.mark, 'after');
    await shell.answer(work('after the command', 2));
    assert.equal(await done, true);
    assert.equal(openThrow.view.mark, 'after the command');
    assert.equal(openThrow.query.station, 'iron');
  });

  test('a command’s answer is not shown over a screen that was come to meanwhile', async () => {
    const done = commands.act(TICK);
    const [act] = shell.waiting;
    void screens.go({ at: 'measure', piece: PIECE });
    await shell.answer(view('measure', 'before the command'), shell.last);
    await shell.answer(acted('after', 2), act);
    assert.equal(openThrow.view.mark, 'before the command');
    await shell.answer(view('measure', 'after the command', 2));
    assert.equal(await done, true);
    assert.deepEqual([screens.place.at, openThrow.view.mark], ['measure', 'after the command']);
  });

  test('a command answered after its throw was put down shows nothing', async () => {
    const done = commands.act(TICK);
    void screens.go({ at: 'shelf' }, null);
    await shell.answer(acted('late', 2));
    assert.equal(await done, true);
    assert.deepEqual([openThrow.id, openThrow.view, screens.place.at], [null, null, 'shelf']);
  });

  test('a side screen whose piece is gone with the command is left', async () => {
    void screens.go({ at: 'measure', piece: PIECE });
    await shell.answer(view('measure', 1));
    const done = commands.act(TICK);
    await shell.answer(acted(null, 2, PROBLEM));
    assert.equal(steps.asked, -1);
    void screens.popped(steps.pop());
    await shell.answer(work('after', 2));
    assert.equal(await done, true);
    assert.equal(screens.place.at, 'work');
  });

  test('a command that ends a side screen leads back to work, and can be undone at once', async () => {
    void screens.go({ at: 'measure', piece: PIECE });
    await shell.answer(view('measure', 1));
    const done = commands.settle(TICK, 'Trimmed');
    await shell.answer(acted(null, 2));
    void screens.popped(steps.pop());
    await shell.answer({ ...work('after', 2), head: head(2, { undo: 'the trim' }) });
    assert.equal(await done, true);
    assert.deepEqual([screens.place.at, messages.second.text], ['work', 'Trimmed']);
    mock.timers.tick(300);
    messages.second.run();
    await settled();
    assert.deepEqual(shell.last.given[1], { request: 'undo' });
  });

  test('what waits for its turn is done to the throw it was meant for', async () => {
    void commands.act(TICK);
    const tick = shell.last;
    const kept = commands.inTurn({ do: 'measure', piece: PIECE, width: 1, height: 1 });
    // Meanwhile she opens another throw.
    void screens.go({ at: 'work' }, 'other');
    await settled();
    const other = shell.last;
    await shell.answer(acted('ticked', 2), tick);
    await shell.answer(work('the other', 7), other);
    mock.timers.tick(300);
    await settled();
    const sent = shell.waiting.filter((call) => call.command === 'act');
    assert.deepEqual(
      sent.map((call) => call.given[0]),
      ['bay'],
    );
    await shell.answer(acted('measured', 3), sent[0]);
    assert.equal(await kept, true);
    assert.deepEqual([openThrow.id, openThrow.view.mark], ['other', 'the other']);
  });
});
