import assert from 'node:assert/strict';
import { beforeEach, describe, test } from 'node:test';
import { Aloud, spoken } from './aloud.svelte';

let voices;
let queue;
let cancelled;
let heard;
let aloud;

const voice = (lang, more = {}) => ({ lang, localService: true, default: false, ...more });

describe('a step read aloud', () => {
  beforeEach(() => {
    voices = [voice('de-DE'), voice('en-GB'), voice('en-US', { default: true })];
    queue = [];
    cancelled = 0;
    heard = null;
    const speech = {
      getVoices: () => voices,
      speak: (utterance) => queue.push(utterance),
      cancel: () => {
        cancelled += 1;
        const gone = queue;
        queue = [];
        for (const utterance of gone) utterance.onerror?.();
      },
      addEventListener: (_, run) => (heard = run),
      removeEventListener: () => (heard = null),
    };
    aloud = new Aloud(
      () => speech,
      (text) => ({ text }),
    );
  });

  test('is spoken sentence by sentence, by a voice of the language', () => {
    aloud.follow('en');
    assert.equal(aloud.can, true);
    aloud.read(['Press the lap.', 'Let it cool.']);
    assert.deepEqual(
      queue.map(({ text, lang }) => [text, lang]),
      [
        ['Press the lap.', 'en-US'],
        ['Let it cool.', 'en-US'],
      ],
    );
    assert.equal(aloud.reading, true);
    queue[1].onend();
    assert.equal(aloud.reading, false);
  });

  test('is offered only where the device itself has a voice of the language', () => {
    voices = [voice('fr-FR'), voice('en-US', { localService: false })];
    aloud.follow('en');
    assert.equal(aloud.can, false);
    aloud.read(['Press the lap.']);
    assert.deepEqual(queue, []);
    // The voices of some devices come late.
    voices = [voice('en_GB')];
    heard();
    assert.equal(aloud.can, true);
  });

  test('is not offered where there is no speech', () => {
    const silent = new Aloud(
      () => undefined,
      (text) => ({ text }),
    );
    silent.follow('en')();
    assert.equal(silent.can, false);
  });

  test('stops, and what was stopped does not end what is read next', () => {
    const leave = aloud.follow('en');
    aloud.read(['One.']);
    const [first] = queue;
    aloud.read(['Two.']);
    assert.equal(cancelled, 1);
    first.onend();
    assert.equal(aloud.reading, true);
    leave();
    assert.equal(aloud.reading, false);
    assert.equal(cancelled, 2);
    assert.equal(heard, null);
  });

  test('says all that stands on the step, in its order', () => {
    const card = {
      title: 'Press the lap',
      which_spoken: 'Pair A1 and A2',
      open: null,
      figures: [{ label: 'Lap', value: { text: '½ in', spoken: 'one half inch' } }],
      how: ['Press.', ' '],
      caution: { title: 'Hot iron' },
    };
    assert.deepEqual(spoken(card), [
      'Press the lap',
      'Pair A1 and A2',
      'Lap: one half inch',
      'Press.',
      'Hot iron',
    ]);
    const open = { title: 'Open the seam first', lines: ['Half of it.'] };
    assert.deepEqual(spoken({ ...card, open }).slice(2, 4), ['Open the seam first', 'Half of it.']);
  });
});
