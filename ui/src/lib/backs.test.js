import assert from 'node:assert/strict';
import { test } from 'node:test';
import { Backs } from './backs';

test('a step back undoes what was opened last, and leads away once nothing is open', () => {
  const backs = new Backs();
  const told = [];
  assert.equal(backs.take(), false);
  const page = backs.catch(() => told.push('page'));
  const fold = backs.catch(() => told.push('fold'));
  assert.equal(backs.take(), true);
  fold();
  assert.equal(backs.take(), true);
  page();
  assert.equal(backs.take(), false);
  assert.deepEqual(told, ['fold', 'page']);
});
