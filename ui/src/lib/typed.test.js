import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import { draftSpelledOut, pauseAfter, spelledOut, unit, whole } from './typed';
import { setWords } from './words.svelte';

const INCH = { system: 'inch', fraction: 'eighth', metric: 'cm' };
const METRIC = { ...INCH, system: 'metric' };

setWords({ 'ui-unit-in': 'in', 'ui-unit-mm': 'mm', 'ui-unit-cm': 'cm' }, 'en', '.');

describe('what is typed', () => {
  test('a bare number gets the unit it is read in, so that another ruler cannot change it', () => {
    assert.equal(unit(INCH), 'in');
    assert.equal(unit(METRIC), 'cm');
    assert.equal(spelledOut(' 5 1/2 ', INCH), '5 1/2 in');
    assert.equal(spelledOut('13,5', METRIC), '13,5 cm');
    assert.equal(spelledOut('½', INCH), '½ in');
  });

  test('what has a unit, and what is empty, stays as it was typed', () => {
    for (const text of ['5 in', '12 mm', '5"', '5″', "5'", '3 Zoll', '', '  ']) {
      assert.equal(spelledOut(text, INCH), text);
    }
  });

  test('of a draft the measures are spelled out and nothing else', () => {
    const draft = { side: '5', lap: '1/2 in', across: '6', down: '8', washes: '1', order: 'rows' };
    const spelled = draftSpelledOut(
      { ...draft, width: '', fringe: '', trim: '', between: '', strip: '', longest: '', tail: '' },
      INCH,
    );
    assert.equal(spelled.side, '5 in');
    assert.equal(spelled.lap, '1/2 in');
    assert.deepEqual([spelled.across, spelled.down, spelled.washes], ['6', '8', '1']);
  });

  test('a figure that goes on is waited for, a whole one is read at once', () => {
    for (const text of ['24.', '24,', '9 1/', '9-', '9 1⁄ ']) {
      assert.ok(pauseAfter(['12', text]) > 1000, text);
    }
    for (const text of ['', '24', '24.5', '9 1/2', '9-1/2', '24 cm', 'abc.']) {
      assert.ok(pauseAfter([text, '12']) < 200, text);
    }
  });

  test('a whole number is read as such and anything else is none', () => {
    assert.equal(whole(' 12 '), 12);
    assert.equal(whole('0'), 0);
    for (const text of ['', '1.5', '-1', 'a', '123456', '1 2']) assert.equal(whole(text), null);
  });
});
