import assert from 'node:assert/strict';
import { beforeEach, describe, test } from 'node:test';
import { Cools } from './cools';

let now;
let timers;
let heard;
let cools;

describe('what lies cooling', () => {
  beforeEach(() => {
    now = 1_000;
    timers = [];
    heard = 0;
    const clock = {
      now: () => now,
      after: (run, ms) => timers.push({ run, ms }),
      stop: (timer) => (timers[timer - 1] = null),
    };
    cools = new Cools(clock, () => (heard += 1));
  });

  const running = () => timers.filter((timer) => timer);

  test('is heard when it is cool, once', () => {
    cools.follow(61_000);
    cools.follow(61_000);
    assert.deepEqual(
      running().map(({ ms }) => ms),
      [60_000],
    );
    timers[0].run();
    // The core may still say the same until it is asked again.
    cools.follow(61_000);
    assert.equal(heard, 1);
    assert.equal(timers.length, 1);
  });

  test('is followed anew where it changes, and not once nothing cools', () => {
    cools.follow(61_000);
    cools.follow(31_000);
    assert.deepEqual(
      running().map(({ ms }) => ms),
      [30_000],
    );
    cools.follow(null);
    assert.deepEqual(running(), []);
  });

  test('is heard though the core says first that nothing cools any more', () => {
    cools.follow(61_000);
    now = 61_020;
    cools.follow(null);
    assert.equal(heard, 1);
    assert.deepEqual(running(), []);
    // Nor is it heard again.
    cools.follow(91_000);
    assert.equal(heard, 1);
    assert.equal(running().length, 1);
  });

  test('is not heard where it is taken up before its time', () => {
    cools.follow(61_000);
    now = 60_980;
    cools.follow(null);
    assert.equal(heard, 0);
    assert.deepEqual(running(), []);
  });

  test('is heard at once where its time has passed', () => {
    cools.follow(500);
    assert.deepEqual(
      running().map(({ ms }) => ms),
      [0],
    );
  });
});
