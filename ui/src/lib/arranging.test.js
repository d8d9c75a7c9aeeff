import assert from 'node:assert/strict';
import { beforeEach, describe, test } from 'node:test';
import { PROBLEM, Shell } from '../../test/shell.js';
import { Arranging } from './arranging.svelte';
import { Messages } from './messages.svelte';
import { OpenThrow } from './open-throw.svelte';

let shell;
let messages;
let arranging;

/** Two layouts as they are after so many rounds. */
const after = (rounds) => ({
  running: true,
  rounds,
  said: `${rounds}`,
  cards: ['A', 'B'].map((letter) => ({ letter, changes: `${letter}${rounds}` })),
});
const seen = () => arranging.found.cards.map((card) => card.changes);

describe('arranging', () => {
  beforeEach(() => {
    shell = new Shell('view', 'arrange', 'stopArranging');
    messages = new Messages((thrown) => thrown);
    const openThrow = new OpenThrow(shell.view, () => undefined);
    openThrow.hold('bay');
    arranging = new Arranging(shell, openThrow, messages);
  });

  test('a layout that was tapped stays while better ones are found', async () => {
    arranging.start({ front: 4 });
    const [search] = shell.waiting;
    const tell = search.given[3];
    tell(after(1));
    assert.deepEqual(seen(), ['A1', 'B1']);
    arranging.choose('B');
    tell(after(2));
    assert.deepEqual([seen(), arranging.chosen.changes], [['A2', 'B1'], 'B1']);
    arranging.choose('A');
    await shell.answer({ ...after(3), running: false }, search);
    assert.deepEqual([seen(), arranging.chosen.changes], [['A2', 'B3'], 'A2']);
    assert.equal(messages.said, '3');
    arranging.start({ front: 5 });
    assert.deepEqual([arranging.found, arranging.chosen], [null, null]);
  });

  test('what an older search or a failed one finds is dropped', async () => {
    arranging.start({ front: 4 });
    const [older] = shell.waiting;
    arranging.start({ front: 5 });
    const newer = shell.last;
    older.given[3](after(1));
    assert.equal(arranging.found, null);
    newer.given[3](after(2));
    arranging.choose('A');
    await shell.answer(after(9), older);
    assert.deepEqual(seen(), ['A2', 'B2']);
    await shell.refuse(PROBLEM, newer);
    assert.deepEqual([arranging.wishes, arranging.found, arranging.chosen], [null, null, null]);
    assert.equal(messages.problem, PROBLEM);
  });
});
