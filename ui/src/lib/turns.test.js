import assert from 'node:assert/strict';
import { beforeEach, describe, mock, test } from 'node:test';
import { Messages } from './messages.svelte';
import { Turns } from './turns.svelte';

let messages;
let turns;

describe('turns', () => {
  beforeEach(() => {
    mock.timers.reset();
    mock.timers.enable({ apis: ['setTimeout'] });
    messages = new Messages((thrown) => thrown);
    turns = new Turns(messages);
  });

  /** A command that is done when it is told so. */
  function held() {
    const request = {};
    request.run = () =>
      new Promise((done, failed) => {
        request.done = done;
        request.failed = failed;
      });
    return request;
  }

  test('a command is not begun while another is under way, nor just after', async () => {
    const first = held();
    const done = turns.run(first.run);
    assert.equal(turns.busy, true);
    assert.deepEqual(await turns.run(() => assert.fail('begun')), { is: 'busy' });
    first.done('kept');
    assert.deepEqual(await done, { is: 'done', answer: 'kept' });
    mock.timers.tick(299);
    assert.deepEqual(await turns.run(() => assert.fail('begun')), { is: 'busy' });
    mock.timers.tick(1);
    assert.equal(turns.busy, false);
    assert.equal((await turns.run(async () => 2)).is, 'done');
  });

  test('a command that fails is reported and lets the next one through', async () => {
    messages.offer('Put away', 'Undo', () => undefined);
    const problem = { code: 'disk', said: 'The disk is full.', next: 'Make room.' };
    const request = held();
    const done = turns.run(request.run);
    request.failed(problem);
    assert.deepEqual(await done, { is: 'failed' });
    assert.equal(messages.problem, problem);
    assert.equal(messages.second.text, 'Put away', 'what can be taken back stays so');
    mock.timers.tick(300);
    await turns.run(async () => undefined);
    assert.equal(messages.problem, null, 'the next command begins anew');
    assert.equal(messages.second, null);
  });

  test('what waits is done in its order, each once the one before is through', async () => {
    const log = [];
    const first = held();
    const second = held();
    const done = turns.run(first.run, 0);
    turns.whenFree(() => {
      log.push('second');
      void turns.run(second.run, 0);
    });
    turns.whenFree(() => log.push('third'));
    assert.deepEqual(log, []);
    first.done();
    await done;
    assert.deepEqual(log, [], 'a turn ends only after its answer is taken in');
    mock.timers.tick(1);
    assert.deepEqual(log, ['second']);
    second.done();
    await Promise.resolve();
    await new Promise(setImmediate);
    mock.timers.tick(1);
    assert.deepEqual(log, ['second', 'third']);
    turns.whenFree(() => log.push('at once'));
    assert.equal(log.at(-1), 'at once');
  });
});
