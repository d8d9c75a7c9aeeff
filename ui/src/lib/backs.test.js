import assert from 'node:assert/strict';
import { test } from 'node:test';
import { Backs } from './backs';

test('a step back undoes what was opened last, and leads away once nothing is open', () => {
  const backs = new Backs();
  const heard = [];
  assert.equal(backs.take(), false);
  const page = backs.catch(() => heard.push('page'));
  const fold = backs.catch(() => heard.push('fold'));
  assert.equal(backs.take(), true);
  fold();
  assert.equal(backs.take(), true);
  page();
  assert.equal(backs.take(), false);
  assert.deepEqual(heard, ['fold', 'page']);
});
