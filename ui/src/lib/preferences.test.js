import assert from 'node:assert/strict';
import { beforeEach, describe, test } from 'node:test';
import { PROBLEM, Shell, settled } from '../../test/shell.js';
import { Preferences } from './preferences.svelte';
import { Messages } from './messages.svelte';

const RULER = { system: 'inch', fraction: 'eighth', metric: 'mm' };
const PREFS = { ruler: RULER, text: 100, theme: 'auto', language: 'en' };
const METRIC = { ...PREFS, ruler: { ...RULER, system: 'metric' } };

let shell;
let messages;
let log;
let preferences;

describe('preferences', () => {
  beforeEach(async () => {
    shell = new Shell('hello', 'setPrefs');
    messages = new Messages((thrown) => (thrown.code ? thrown : null));
    log = [];
    preferences = new Preferences(
      shell,
      messages,
      (hello) => log.push(`greeted in ${hello.prefs.ruler.system}`),
      async () => void log.push('looked again'),
    );
    void preferences.greet();
    await shell.answer({ prefs: PREFS, problem: null });
    log = [];
  });

  const form = () => ({
    spell: async () => void log.push('spelled out'),
    reread: async () => void log.push('read again'),
  });

  test('what is typed is spelled out before the ruler changes, and read again afterwards', async () => {
    preferences.open(form());
    const set = preferences.set(() => METRIC);
    await settled();
    assert.deepEqual(log, ['spelled out']);
    await shell.answer({ prefs: METRIC });
    await set;
    assert.deepEqual(log, ['spelled out', 'greeted in metric', 'read again']);
    assert.equal(preferences.prefs, METRIC);
  });

  test('where no form is open the throw is looked at again; a language does the same', async () => {
    for (const prefs of [METRIC, { ...METRIC, language: 'de' }]) {
      log = [];
      void preferences.set(() => prefs);
      await settled();
      await shell.answer({ prefs });
      assert.deepEqual(log, ['greeted in metric', 'looked again']);
    }
  });

  test('larger letters or another theme touch no form', async () => {
    preferences.open(form());
    void preferences.set(() => ({ text: 150, theme: 'dark' }));
    await settled();
    await shell.answer({ prefs: { ...PREFS, text: 150, theme: 'dark' } });
    assert.deepEqual(log, ['greeted in inch']);
  });

  test('a form that was closed is not asked, nor one that another has followed', async () => {
    const closeOld = preferences.open(form());
    const closeNew = preferences.open({
      ...form(),
      spell: async () => void log.push('the new one'),
    });
    closeOld();
    void preferences.set(() => METRIC);
    await settled();
    assert.deepEqual(log, ['the new one']);
    await shell.answer({ prefs: METRIC });
    closeNew();
    log = [];
    void preferences.set(() => PREFS);
    await settled();
    await shell.answer({ prefs: PREFS });
    assert.deepEqual(log, ['greeted in inch', 'looked again']);
  });

  test('preferences that are not kept change nothing and are reported', async () => {
    const set = preferences.set(() => METRIC);
    await settled();
    await shell.refuse(PROBLEM);
    await set;
    assert.equal(preferences.prefs, PREFS);
    assert.equal(messages.problem, PROBLEM);
    assert.deepEqual(log, []);
  });

  test('a change that is asked for before the last is answered keeps both', async () => {
    void preferences.set(() => ({ text: 200 }));
    void preferences.set(({ ruler }) => ({ ruler: { ...ruler, system: 'metric' } }));
    const last = preferences.set(({ ruler }) => ({ ruler: { ...ruler, metric: 'cm' } }));
    const kept = [
      { ...PREFS, text: 200 },
      { ...METRIC, text: 200 },
      { ...METRIC, text: 200, ruler: { ...METRIC.ruler, metric: 'cm' } },
    ];
    for (const prefs of kept) {
      await settled();
      assert.deepEqual(
        shell.waiting.map(({ given }) => given),
        [[prefs]],
      );
      await shell.answer({ prefs });
    }
    await last;
    assert.deepEqual(preferences.prefs, kept[2]);
  });

  test('a change that fails holds up none after it', async () => {
    void preferences.set(() => ({ text: 200 }));
    void preferences.set(() => ({ theme: 'dark' }));
    await settled();
    await shell.refuse(PROBLEM);
    assert.deepEqual(shell.last.given, [{ ...PREFS, theme: 'dark' }]);
    await shell.answer({ prefs: { ...PREFS, theme: 'dark' } });
    assert.equal(preferences.prefs.theme, 'dark');
  });
});
