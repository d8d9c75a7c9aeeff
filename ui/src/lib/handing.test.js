import assert from 'node:assert/strict';
import { beforeEach, describe, mock, test } from 'node:test';
import { PROBLEM, Shell, settled } from '../../test/shell.js';
import { Handing } from './handing.svelte';
import { InHand } from './inhand.svelte';
import { Told } from './told.svelte';
import { Turns } from './turns.svelte';
import { setWords } from './words.svelte';

let shell;
let told;
let inHand;
let turns;
let handing;

describe('handing on', () => {
  beforeEach(() => {
    mock.timers.reset();
    mock.timers.enable({ apis: ['setTimeout'] });
    setWords({ 'ui-print-stopped': 'Stopped' }, 'en', '.');
    shell = new Shell('look', 'hand', 'print', 'stopPrinting', 'photo');
    told = new Told((thrown) => (thrown.code ? thrown : null));
    inHand = new InHand(shell.look, (thrown) => told.fail(thrown));
    inHand.hold('bay');
    turns = new Turns(told);
    handing = new Handing(shell, turns, inHand, told);
  });

  test('a print goes on while other things are done, and tells how far it is', async () => {
    const printed = handing.print({ card: true });
    const [print] = shell.waiting;
    assert.equal(turns.busy, false);
    const [, , tell] = print.given;
    tell({ done: 3, all: 9 });
    assert.deepEqual(handing.printing, { done: 3, all: 9 });
    void handing.print({ card: false });
    assert.equal(
      shell.waiting.filter((call) => call.command === 'print').length,
      1,
      'one at a time',
    );
    await shell.answer({ said: 'Bay.pdf' }, print);
    await printed;
    assert.deepEqual([handing.printing, handing.handed, told.said], [null, 'Bay.pdf', 'Bay.pdf']);
    assert.equal(shell.waiting.length, 0, 'nobody was asked how far it is');
  });

  test('what is told of a print that has ended is dropped', async () => {
    void handing.print({ card: true });
    const [print] = shell.waiting;
    const [, , tell] = print.given;
    await shell.answer({ said: null }, print);
    tell({ done: 8, all: 9 });
    assert.equal(handing.printing, null);
    assert.equal(told.said, 'Stopped');
  });

  test('a print that fails is told, and another can begin', async () => {
    void handing.print({ card: true });
    await shell.refuse(PROBLEM);
    assert.equal(told.problem, PROBLEM);
    void handing.print({ card: true });
    assert.equal(shell.last.command, 'print');
  });

  test('what was handed on is told only while its throw is in hand', async () => {
    void handing.hand({ hand: 'throw' });
    await shell.answer({ said: 'bay.jsonl' });
    assert.equal(handing.handed, 'bay.jsonl');
    mock.timers.tick(300);
    void handing.hand({ hand: 'throw' });
    assert.equal(handing.handed, null);
    inHand.hold('sill');
    await shell.answer({ said: 'bay.jsonl' });
    assert.equal(handing.handed, null);
  });

  test('a photo dropped meanwhile is taken once the deed is through', async () => {
    const taken = [];
    handing.onphoto = () => taken.push('photo');
    void handing.hand({ hand: 'throw' });
    handing.dropped();
    await shell.answer({ said: null });
    await settled();
    assert.deepEqual(taken, []);
    mock.timers.tick(300);
    assert.deepEqual(taken, ['photo']);
  });
});
