import assert from 'node:assert/strict';
import { beforeEach, describe, test } from 'node:test';
import { settled } from '../test/shell.js';
import { Worker } from '../test/worker.js';
import { Service } from './service';

const BROKE = { code: 'broke', said: 'It broke off.', next: 'All is kept.' };
const ask = (command) => ({ do: 'ask', command, given: '{}' });

/** A worker that holds the service. */
class ServingWorker extends Worker {
  async say(said) {
    super.say(said);
    await settled();
  }

  ok(n, ok) {
    return this.say({ n, json: JSON.stringify({ ok }) });
  }

  get commands() {
    return this.asked.slice(1).map(({ n, command }) => [n, command]);
  }
}

let workers;
let service;
/** What became of each call, in the order of the answers. */
let came;

function call(command) {
  const told = (is) => (what) => came.push([command, is, what]);
  service.json(ask(command)).then(told('answered'), told('failed'));
}

describe('the service in its worker', () => {
  beforeEach(() => {
    workers = [];
    came = [];
    globalThis.navigator ??= { languages: ['en'], language: 'en' };
    service = new Service(() => {
      workers.push(new ServingWorker());
      return workers.at(-1);
    });
  });

  test('calls are sent in their order, and their answers may come in any', async () => {
    call('view');
    call('act');
    const [worker] = workers;
    assert.equal(worker.asked[0].do, 'open');
    assert.deepEqual(worker.commands, [
      [1, 'view'],
      [2, 'act'],
    ]);
    await worker.ok(2, { revision: 5 });
    await worker.say({ n: 1, json: JSON.stringify({ problem: BROKE }) });
    assert.deepEqual(came, [
      ['act', 'answered', { revision: 5 }],
      ['view', 'failed', BROKE],
    ]);
  });

  test('where it breaks off, what was waiting is asked again, but no command twice', async (t) => {
    t.mock.method(console, 'error', () => undefined);
    call('shelf');
    const [first] = workers;
    await first.say({ sayBroke: JSON.stringify({ problem: BROKE }) });
    await first.ok(1, { revision: 7 });
    for (const command of ['act', 'view', 'act', 'shelf']) call(command);
    // The first of the commands is done and waits for its screen; the view is what breaks off.
    await first.say({ done: 2 });
    await first.say({ n: 3, broke: 'unreachable' });
    assert.equal(first.ended, true);
    assert.deepEqual(workers[1].commands, [
      [4, 'act'],
      [5, 'shelf'],
    ]);
    assert.deepEqual(came.slice(1), [
      ['act', 'failed', BROKE],
      ['view', 'failed', BROKE],
    ]);
    // What is answered now is newer than all before.
    await workers[1].ok(4, { revision: 1 });
    assert.deepEqual(came.at(-1), ['act', 'answered', { revision: 9 }]);
  });

  test('what is answered after the files were taken over is newer than all before', async () => {
    call('view');
    const [worker] = workers;
    await worker.ok(1, { revision: 3 });
    await worker.say({ anew: true });
    call('view');
    await worker.ok(2, { revision: 0 });
    assert.deepEqual(came.at(-1), ['view', 'answered', { revision: 4 }]);
  });
});
