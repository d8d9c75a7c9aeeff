import assert from 'node:assert/strict';
import { beforeEach, describe, test } from 'node:test';
import { Steps, settled } from '../../test/shell.js';
import { Trail } from './trail';

let steps;
let trail;
/** What was shown on coming back. */
let shown;

describe('the trail', () => {
  beforeEach(() => {
    steps = new Steps();
    trail = new Trail(steps);
    shown = [];
  });

  const pop = (state = steps.pop()) =>
    trail.popped(state, async (place, id) => void shown.push([place.at, id]));

  const go = (at, over = false) => trail.step({ at }, at === 'shelf' ? null : 'bay', over);

  test('every entry keeps how deep it lies, and its tab screen', () => {
    go('work');
    go('bench', true);
    go('measure');
    go('off');
    assert.deepEqual(
      steps.entries.map(({ place, depth, tab }) => [place.at, depth, tab]),
      [
        ['shelf', 0, null],
        ['bench', 1, 1],
        ['measure', 2, 1],
        ['off', 3, 1],
      ],
    );
    assert.equal(trail.aside, 2);
  });

  test('a side screen is left for its tab in one step, taken by another if that is wanted', async () => {
    go('work');
    go('measure');
    go('off');
    const left = trail.leave({ at: 'plan' });
    assert.equal(steps.asked, -2);
    await pop();
    await left;
    assert.deepEqual(shown, [['plan', 'bay']]);
    assert.equal(steps.top.place.at, 'plan', 'the history knows it too');
    assert.equal(trail.aside, 0);
  });

  test('a move meanwhile waits, and then starts from where the one before has led', async () => {
    go('work');
    go('measure');
    void trail.leave(null);
    const moved = trail.move(async () => {
      assert.deepEqual(shown, [['work', 'bay']], 'what is come back to was begun first');
      go('gather');
    });
    await settled();
    assert.equal(trail.isResting, false);
    assert.equal(steps.top.place.at, 'measure');
    void pop();
    await moved;
    assert.deepEqual([steps.top.place.at, steps.top.depth, steps.top.tab], ['gather', 2, 1]);
  });

  test('moves that wait are made one after another', async () => {
    go('work');
    go('measure');
    const log = [];
    void trail.leave(null);
    void trail.move(async () => {
      log.push('first');
      go('gather');
      await trail.leave(null);
      log.push('back');
    });
    void trail.move(async () => log.push('second'));
    void pop();
    await settled();
    assert.deepEqual(log, ['first']);
    void pop();
    await settled();
    assert.deepEqual(log.sort(), ['back', 'first', 'second']);
  });

  test('where the maker goes back by herself the entry is shown as it stands', async () => {
    go('work');
    go('measure');
    trail.back();
    await pop();
    trail.back();
    await pop();
    assert.deepEqual(shown, [
      ['work', 'bay'],
      ['shelf', null],
    ]);
    assert.equal(trail.isFirst, true);
  });

  test('an entry that is not ours is the shelf', async () => {
    go('work');
    await pop(null);
    assert.deepEqual(shown, [['shelf', null]]);
    assert.equal(trail.isFirst, true);
  });

  test('from however deep one step leads to where it began', async () => {
    go('work');
    go('measure');
    go('trim');
    const back = trail.restart({ at: 'shelf' });
    assert.equal(steps.asked, -3);
    await pop();
    await back;
    assert.deepEqual(shown, [['shelf', null]]);
    assert.equal(trail.isFirst, true);
  });
});
