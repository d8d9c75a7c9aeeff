import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import { describe, test } from 'node:test';
import { TABS, isApart, isOfThrow, isTab } from './places';

const read = (path) => readFileSync(new URL(path, import.meta.url), 'utf8');

/** The names of all views, as the core tells them. */
const views = () => {
  const [declared] = read('./types.ts').match(/export type View =[^;]*;/);
  return [...declared.matchAll(/"seen": "([^"]+)"/g)].map(([, seen]) => seen);
};

describe('places', () => {
  test('every view of a throw has just one screen that shows it', () => {
    const folder = new URL('../screens/', import.meta.url);
    const shown = readdirSync(folder)
      .map(
        (file) => read(`../screens/${file}`).match(/export const room = roomOf\(\s*'([^']+)'/)?.[1],
      )
      .filter(Boolean);
    assert.deepEqual(shown.sort(), views().sort());
    assert.ok(shown.length > 10, `only ${shown.length} screens were found`);
  });

  test('a screen of a throw is a tab or stands apart', () => {
    for (const at of views()) {
      const place = { at };
      assert.equal(isOfThrow(place), true);
      assert.notEqual(isTab(place), isApart(place));
      assert.equal(isTab(place), TABS.includes(at));
    }
    for (const at of ['shelf', 'new', 'settings']) {
      assert.deepEqual([isOfThrow({ at }), isTab({ at }), isApart({ at })], [false, false, false]);
    }
  });
});
