import assert from 'node:assert/strict';
import { beforeEach, describe, mock, test } from 'node:test';
import { PROBLEM, Shell, Steps, settled, view } from '../../test/shell.js';
import { OpenThrow } from './open-throw.svelte';
import { Rooms, room } from './places';
import { Screens } from './screens.svelte';
import { Shelf } from './shelf.svelte';
import { Messages } from './messages.svelte';
import { Trail } from './trail';
import { Turns } from './turns.svelte';

let shell;
let messages;
let screens;
let shelf;

describe('the shelf', () => {
  beforeEach(() => {
    mock.timers.reset();
    mock.timers.enable({ apis: ['setTimeout'] });
    shell = new Shell(
      'view',
      'shelf',
      'act',
      'shelfCommand',
      'again',
      'importFile',
      'dropped',
      'decideImport',
      'save',
    );
    messages = new Messages((thrown) => (thrown.code ? thrown : null));
    const openThrow = new OpenThrow(shell.view, (thrown) => messages.fail(thrown));
    const rooms = new Rooms();
    rooms.set([room('work', () => ({ see: 'work', station: null, batch: null }))]);
    const nothing = async () => undefined;
    screens = new Screens(
      new Trail(new Steps()),
      rooms,
      openThrow,
      messages,
      () => undefined,
      nothing,
    );
    shelf = new Shelf(shell, new Turns(messages), openThrow, screens, messages);
  });

  test('a command on the shelf brings the shelf as it is then', async () => {
    const answered = shelf.run({ command: 'demo' });
    await shell.answer({ id: 'demo', shelf: { rows: ['demo'], deleted: [] } });
    assert.equal((await answered).id, 'demo');
    assert.deepEqual(shelf.view.rows, ['demo']);
  });

  test('a saved copy is told and the shelf read again; one thought better of is not', async () => {
    const saved = shelf.saveCopy('a');
    assert.deepEqual(shell.last.given, ['a', { export: 'throw' }]);
    await shell.answer({ said: 'Saved' });
    assert.equal(messages.said, 'Saved');
    assert.equal(shell.last.command, 'shelf');
    await shell.answer({ rows: ['a'], deleted: [] });
    await saved;
    assert.deepEqual(shelf.view.rows, ['a']);
    mock.timers.tick(300);
    const stopped = shelf.saveCopy('a');
    await shell.answer({ said: null });
    await stopped;
    assert.equal(shell.waiting.length, 0);
  });

  test('the shelf is shown at once, and its rows fill in', async () => {
    const [read, unread] = [{ id: 'a' }, { id: 'b', unread: true }];
    shelf.show({ rows: [read, unread], deleted: [] });
    assert.deepEqual(shelf.view.rows, [read, unread]);
    assert.equal(shell.last.command, 'shelf');
    // Another answer that comes meanwhile does not ask a second time.
    shelf.show({ rows: [unread], deleted: [unread] });
    await shell.answer({ rows: [read], deleted: [unread] });
    assert.equal(shell.last.command, 'shelf');
    await shell.answer({ rows: [read], deleted: [read] });
    assert.deepEqual(shelf.view.deleted, [read]);
    assert.equal(shell.waiting.length, 0);
  });

  test('after a failure the shelf is read anew, and what failed stays shown', async () => {
    const answered = shelf.run({ command: 'delete', id: 'bay' });
    await shell.refuse(PROBLEM);
    assert.equal(shell.last.command, 'shelf');
    await shell.answer({ rows: ['bay'], deleted: [] });
    assert.equal(await answered, null);
    assert.deepEqual(shelf.view.rows, ['bay']);
    assert.equal(messages.problem, PROBLEM);
  });

  test('an action on a throw that lies there is followed by the shelf, done or not', async () => {
    for (const does of [true, false]) {
      const done = shelf.actOn('bay', { do: 'rename', name: 'Sill' });
      if (does) await shell.answer({});
      else await shell.refuse(PROBLEM);
      await shell.answer({ rows: [String(does)], deleted: [] });
      assert.equal(await done, does);
      assert.deepEqual(shelf.view.rows, [String(does)]);
      mock.timers.tick(300);
    }
  });

  test('a second tap begins nothing', async () => {
    void shelf.run({ command: 'demo' });
    assert.equal(await shelf.run({ command: 'demo' }), null);
    assert.equal(await shelf.actOn('bay', { do: 'rename', name: '' }), false);
    await shelf.makeAgain('bay');
    assert.equal(shell.waiting.length, 1);
  });

  test('a file dropped while a command is under way is looked into afterwards', async () => {
    void shelf.run({ command: 'demo' });
    shelf.dropped();
    assert.deepEqual(
      shell.waiting.map((call) => call.command),
      ['shelfCommand'],
    );
    await shell.answer({ id: 'demo', shelf: { rows: [], deleted: [] } });
    mock.timers.tick(300);
    await shell.answer({ title: 'A copy' });
    assert.equal(shelf.imported.title, 'A copy');
  });

  test('what was brought stays until it is decided, and while it cannot be done', async () => {
    void shelf.importFile();
    await shell.answer({ title: 'A copy' });
    mock.timers.tick(1);
    void shelf.decide({ choice: 'merge' }, 1);
    await shell.refuse(PROBLEM);
    await shell.answer({ rows: [], deleted: [] });
    assert.equal(shelf.imported.title, 'A copy');
    assert.equal(messages.problem, PROBLEM);
    mock.timers.tick(300);
    const decided = shelf.decide({ choice: 'merge' }, 1);
    await shell.answer({ said: 'Merged', id: 'bay', shelf: { rows: ['bay'], deleted: [] } });
    assert.equal(shelf.imported, null);
    await shell.answer({ ...view('work', 1), card: {} });
    await decided;
    assert.deepEqual(
      [screens.place.at, messages.second.text, messages.said],
      ['work', 'Merged', 'Merged'],
    );
  });

  test('a throw made after another begins with what that one teaches', async () => {
    const made = shelf.makeAgain('bay');
    await shell.answer({ name: 'Bay', draft: {}, prints: [], denims: [], lessons: { rows: [] } });
    await settled();
    await made;
    assert.equal(screens.place.at, 'new');
    assert.deepEqual(shelf.begun.after, { id: 'bay', lessons: { rows: [] } });
    assert.equal(shelf.begun.page, 0);
  });
});
