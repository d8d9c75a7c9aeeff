import assert from 'node:assert/strict';
import { test } from 'node:test';
import { heapsOf, nothingYet, ofThoseOffered, wishOf } from './cloth.ts';

const prints = ['red', 'green', 'blue'];
const denims = ['dark', 'faded'];

test('nothing is asked before anything is said', () => {
  const cloth = nothingYet('5 in');
  assert.equal(wishOf(cloth), null);
  cloth.jeans[0].pairs = '2';
  cloth.fabric = 'pack';
  assert.equal(wishOf(cloth).jeans[0].pairs, 2);
  // A pack that nobody has counted is none.
  assert.equal(wishOf(cloth).pack, null);
  cloth.count = '42';
  assert.deepEqual(wishOf(cloth).pack, { side: '5 in', count: 42 });
  assert.equal(wishOf({ ...nothingYet('5 in'), width: '1 m', height: '2 m' }).height, '2 m');
});

test('of those offered stay what she has', () => {
  const cloth = nothingYet('5 in');
  // Nothing said: all stay.
  assert.deepEqual(ofThoseOffered(cloth, prints, denims), { cloth, prints, denims });
  cloth.fabric = 'pack';
  cloth.count = '42';
  cloth.print = 2;
  cloth.jeans[0] = { ...cloth.jeans[0], pairs: '1', denim: 1 };
  const had = ofThoseOffered(cloth, prints, denims);
  assert.deepEqual([had.prints, had.denims], [['blue'], ['faded']]);
  // What is for the third fabric and the second denim is for the only ones now.
  assert.deepEqual([had.cloth.print, had.cloth.jeans[0].denim], [0, 0]);
  // A row of no pairs names no denim; two denims in use both stay.
  cloth.jeans.push({ ...cloth.jeans[0], pairs: '0', denim: 0 });
  assert.deepEqual(ofThoseOffered(cloth, prints, denims).denims, ['faded']);
  cloth.jeans[1].pairs = '3';
  assert.deepEqual(ofThoseOffered(cloth, prints, denims).denims, denims);
});

test('a pack is put on the pile as she says it is', async () => {
  const offers = { jeans: [], cloths: [] };
  const read = async () => 127_000_000;
  const put = (said) => {
    const cloth = { ...nothingYet('5 in'), fabric: 'pack', ...said };
    return heapsOf(cloth, offers, 'inch', { pack: 'Pack' }, read);
  };
  const pack = { do: 'add-pack', side: 127_000_000, count: 42, name: 'Pack' };
  const makes = { for: 'fabric', print: 0 };
  assert.deepEqual(await put({ count: '42', mixed: true }), [{ ...pack, makes, mixed: true }]);
  assert.deepEqual(await put({ count: '42' }), [{ ...pack, makes, mixed: false }]);
  assert.deepEqual(await put({ count: '' }), []);
});
