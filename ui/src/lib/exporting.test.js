import assert from 'node:assert/strict';
import { beforeEach, describe, mock, test } from 'node:test';
import { PROBLEM, Shell, settled } from '../../test/shell.js';
import { Exporting } from './exporting.svelte';
import { OpenThrow } from './open-throw.svelte';
import { Messages } from './messages.svelte';
import { Turns } from './turns.svelte';
import { setWords } from './words.svelte';

let shell;
let messages;
let openThrow;
let turns;
let exporting;

describe('exporting', () => {
  beforeEach(() => {
    mock.timers.reset();
    mock.timers.enable({ apis: ['setTimeout'] });
    setWords({ 'ui-print-stopped': 'Stopped' }, 'en', '.');
    shell = new Shell('view', 'save', 'print', 'stopPrinting', 'photo');
    messages = new Messages((thrown) => (thrown.code ? thrown : null));
    openThrow = new OpenThrow(shell.view, (thrown) => messages.fail(thrown));
    openThrow.hold('bay');
    turns = new Turns(messages);
    exporting = new Exporting(shell, turns, openThrow, messages);
  });

  test('a print goes on while other things are done, and tells how far it is', async () => {
    const printed = exporting.print({ card: true });
    const [print] = shell.waiting;
    assert.equal(turns.busy, false);
    const [, , tell] = print.given;
    tell({ done: 3, all: 9 });
    assert.deepEqual(exporting.printing, { done: 3, all: 9 });
    void exporting.print({ card: false });
    assert.equal(
      shell.waiting.filter((call) => call.command === 'print').length,
      1,
      'one at a time',
    );
    await shell.answer({ said: 'Bay.pdf' }, print);
    await printed;
    assert.deepEqual(
      [exporting.printing, exporting.exported, messages.said],
      [null, 'Bay.pdf', 'Bay.pdf'],
    );
    assert.equal(shell.waiting.length, 0, 'nobody was asked how far it is');
  });

  test('what is reported of a print that has ended is dropped', async () => {
    void exporting.print({ card: true });
    const [print] = shell.waiting;
    const [, , tell] = print.given;
    await shell.answer({ said: null }, print);
    tell({ done: 8, all: 9 });
    assert.equal(exporting.printing, null);
    assert.equal(messages.said, 'Stopped');
  });

  test('a print that fails is reported, and another can begin', async () => {
    void exporting.print({ card: true });
    await shell.refuse(PROBLEM);
    assert.equal(messages.problem, PROBLEM);
    void exporting.print({ card: true });
    assert.equal(shell.last.command, 'print');
  });

  test('what was exported is shown only while its throw is open', async () => {
    void exporting.save({ export: 'throw' });
    await shell.answer({ said: 'bay.jsonl' });
    assert.equal(exporting.exported, 'bay.jsonl');
    mock.timers.tick(300);
    void exporting.save({ export: 'throw' });
    assert.equal(exporting.exported, null);
    openThrow.hold('sill');
    await shell.answer({ said: 'bay.jsonl' });
    assert.equal(exporting.exported, null);
  });

  test('a photo dropped meanwhile is taken once the command is through', async () => {
    const taken = [];
    exporting.onphoto = () => taken.push('photo');
    void exporting.save({ export: 'throw' });
    exporting.dropped();
    await shell.answer({ said: null });
    await settled();
    assert.deepEqual(taken, []);
    mock.timers.tick(300);
    assert.deepEqual(taken, ['photo']);
  });
});
