import assert from 'node:assert/strict';
import { beforeEach, describe, test } from 'node:test';
import { Worker } from '../test/worker.js';
import { Reader } from './reader';

const view = (n) => ({ n, do: 'ask', command: 'view', given: '{}' });
const act = (n) => ({ n, do: 'ask', command: 'act', given: '{}' });

let started;
let told;
let answered;
let again;
let reader;

describe('the reader', () => {
  beforeEach(() => {
    [started, told, answered, again] = [[], [], [], []];
    const start = () => {
      started.push(new Worker());
      return started.at(-1);
    };
    const take = (list) => (one) => list.push(one);
    reader = new Reader(start, take(told), take(answered), take(again));
  });

  test('it is started with the first screen, and its answers are passed on', () => {
    assert.equal(started.length, 0);
    reader.read(view(1), 'one', 'broke');
    reader.read(view(2), 'two', 'broke');
    const [worker, ...more] = started;
    assert.equal(more.length, 0);
    assert.deepEqual(worker.asked, [
      { do: 'read', n: 1, reading: 'one' },
      { do: 'read', n: 2, reading: 'two' },
    ]);
    worker.say({ n: 1, json: 'seen' });
    assert.deepEqual(answered, [{ n: 1, json: 'seen' }]);
    assert.deepEqual([told, again], [[], []]);
  });

  test('where it breaks off, that call alone is answered so, and another is started', () => {
    reader.read(view(1), 'one', 'broke 1');
    reader.read(view(2), 'two', 'broke 2');
    reader.read(act(3), 'three', 'done, but broke');
    const [first] = started;
    first.say({ n: 1, broke: 'unreachable' });
    assert.equal(first.ended, true);
    assert.deepEqual(told, [true], 'the next has no copy');
    // A command is done, and is not done again.
    assert.deepEqual(answered, [
      { n: 1, json: 'broke 1' },
      { n: 3, json: 'done, but broke' },
    ]);
    assert.deepEqual(again, [view(2)]);
    reader.read(view(2), 'two anew', 'broke 2');
    assert.deepEqual(started[1].asked, [{ do: 'read', n: 2, reading: 'two anew' }]);
    // What the first may still have said is not heard.
    first.say({ n: 2, json: 'old' });
    assert.equal(answered.length, 2);
    started[1].say({ n: 2, json: 'seen' });
    assert.deepEqual(answered[2], { n: 2, json: 'seen' });
  });

  test('where it cannot be started, the service makes the screens', () => {
    for (const fails of [
      (worker) => worker.say({ unloaded: 'no' }),
      (worker) => worker.onerror(),
    ]) {
      [told, answered, again].forEach((list) => list.splice(0));
      reader.read(view(1), 'one', 'broke');
      fails(started.at(-1));
      assert.deepEqual([told, answered, again], [[false], [], [view(1)]]);
    }
  });

  test('let go with its copy, what waited is asked again', () => {
    reader.end();
    assert.deepEqual(told, [true]);
    reader.read(view(1), 'one', 'broke');
    reader.end();
    assert.equal(started[0].ended, true);
    assert.deepEqual([answered, again], [[], [view(1)]]);
  });
});
