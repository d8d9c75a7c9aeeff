import assert from 'node:assert/strict';
import { afterEach, beforeEach, describe, test } from 'node:test';
import { shell } from './program';

let asked;

describe('the program as the shell', () => {
  beforeEach(() => {
    asked = [];
    globalThis.window = {
      lapworkGreeting: Promise.resolve('greeted early'),
      __TAURI_INTERNALS__: {
        invoke: (command) => {
          asked.push(command);
          return Promise.resolve(`answer to ${command}`);
        },
      },
    };
  });

  afterEach(() => {
    delete globalThis.window;
  });

  test('the greeting that the program has sent for is taken, once', async () => {
    assert.equal(await shell.ask('hello'), 'greeted early');
    assert.deepEqual(asked, []);
    assert.equal(await shell.ask('hello'), 'answer to hello');
    assert.deepEqual(asked, ['hello']);
  });

  test('nothing else is answered by it', async () => {
    assert.equal(await shell.ask('shelf'), 'answer to shelf');
    assert.equal(await shell.ask('hello'), 'greeted early');
  });

  test('without one the program is asked', async () => {
    delete globalThis.window.lapworkGreeting;
    assert.equal(await shell.ask('hello'), 'answer to hello');
  });

  test('a greeting that failed is told, and the next try asks anew', async () => {
    globalThis.window.lapworkGreeting = Promise.reject(new Error('no folder'));
    await assert.rejects(shell.ask('hello'), /no folder/);
    assert.equal(await shell.ask('hello'), 'answer to hello');
  });
});
