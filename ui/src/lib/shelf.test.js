import assert from 'node:assert/strict';
import { beforeEach, describe, mock, test } from 'node:test';
import { PROBLEM, Shell, Steps, settled, view } from '../../test/shell.js';
import { InHand } from './inhand.svelte';
import { Rooms, room } from './places';
import { Screens } from './screens.svelte';
import { Shelf } from './shelf.svelte';
import { Told } from './told.svelte';
import { Trail } from './trail';
import { Turns } from './turns.svelte';

let shell;
let told;
let screens;
let shelf;

describe('the shelf', () => {
  beforeEach(() => {
    mock.timers.reset();
    mock.timers.enable({ apis: ['setTimeout'] });
    shell = new Shell('look', 'shelf', 'act', 'tend', 'again', 'bring', 'dropped', 'take');
    told = new Told((thrown) => (thrown.code ? thrown : null));
    const inHand = new InHand(shell.look, (thrown) => told.fail(thrown));
    const rooms = new Rooms();
    rooms.take([room('work', () => ({ see: 'work', station: null, batch: null }))]);
    const nothing = async () => undefined;
    screens = new Screens(new Trail(new Steps()), rooms, inHand, told, () => undefined, nothing);
    shelf = new Shelf(shell, new Turns(told), inHand, screens, told);
  });

  test('a deed on the shelf brings the shelf as it is then', async () => {
    const tended = shelf.tend({ tend: 'demo' });
    await shell.answer({ id: 'demo', shelf: { rows: ['demo'] } });
    assert.equal((await tended).id, 'demo');
    assert.deepEqual(shelf.view.rows, ['demo']);
  });

  test('after a failure the shelf is read anew, and what failed stays told', async () => {
    const tended = shelf.tend({ tend: 'delete', id: 'bay' });
    await shell.refuse(PROBLEM);
    assert.equal(shell.last.command, 'shelf');
    await shell.answer({ rows: ['bay'] });
    assert.equal(await tended, null);
    assert.deepEqual(shelf.view.rows, ['bay']);
    assert.equal(told.problem, PROBLEM);
  });

  test('an action on a throw that lies there is followed by the shelf, done or not', async () => {
    for (const does of [true, false]) {
      const done = shelf.actOn('bay', { do: 'rename', name: 'Sill' });
      if (does) await shell.answer({});
      else await shell.refuse(PROBLEM);
      await shell.answer({ rows: [String(does)] });
      assert.equal(await done, does);
      assert.deepEqual(shelf.view.rows, [String(does)]);
      mock.timers.tick(300);
    }
  });

  test('a second tap begins nothing', async () => {
    void shelf.tend({ tend: 'demo' });
    assert.equal(await shelf.tend({ tend: 'demo' }), null);
    assert.equal(await shelf.actOn('bay', { do: 'rename', name: '' }), false);
    await shelf.makeAgain('bay');
    assert.equal(shell.waiting.length, 1);
  });

  test('a file dropped while a deed is under way is looked into afterwards', async () => {
    void shelf.tend({ tend: 'demo' });
    shelf.dropped();
    assert.deepEqual(
      shell.waiting.map((call) => call.command),
      ['tend'],
    );
    await shell.answer({ id: 'demo', shelf: { rows: [] } });
    mock.timers.tick(300);
    await shell.answer({ title: 'A copy' });
    assert.equal(shelf.brought.title, 'A copy');
  });

  test('what was brought stays until it is decided, and while it cannot be done', async () => {
    void shelf.bring();
    await shell.answer({ title: 'A copy' });
    mock.timers.tick(1);
    void shelf.decide({ take: 'merge' }, 1);
    await shell.refuse(PROBLEM);
    await shell.answer({ rows: [] });
    assert.equal(shelf.brought.title, 'A copy');
    assert.equal(told.problem, PROBLEM);
    mock.timers.tick(300);
    const decided = shelf.decide({ take: 'merge' }, 1);
    await shell.answer({ said: 'Merged', id: 'bay', shelf: { rows: ['bay'] } });
    assert.equal(shelf.brought, null);
    await shell.answer({ ...view('work', 1), card: {} });
    await decided;
    assert.deepEqual([screens.place.at, told.second.text, told.said], ['work', 'Merged', 'Merged']);
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
