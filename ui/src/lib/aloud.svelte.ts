// A step read aloud by the device's own voice (Web Speech API).
//
// Only a voice on the device itself is used: others send what is read to a host on the network.
// Where there is none for the language of the app, nothing can be read and no control is shown.
// Each sentence is spoken by itself, because some voices break off in long texts.

import type { Card } from './types';

/** The part of the window's speech that is used. */
export type Speech = Pick<SpeechSynthesis, 'getVoices' | 'speak' | 'cancel'> &
  Partial<Pick<SpeechSynthesis, 'addEventListener' | 'removeEventListener'>>;

export class Aloud {
  /** There is a voice for the language. */
  can = $state(false);
  /** Something is being read. */
  reading = $state(false);

  private speech: Speech | undefined;
  private voice: SpeechSynthesisVoice | null = null;
  /** What is read at the moment; what was stopped may still report its end. */
  private turn = 0;

  constructor(
    private readonly here: () => Speech | undefined,
    private readonly uttered: (text: string) => SpeechSynthesisUtterance,
  ) {}

  /** Look for a voice in this language, also once the device has fetched its voices. */
  follow(language: string): () => void {
    const speech = this.here();
    this.speech = speech;
    const look = () => {
      const own = (voice: SpeechSynthesisVoice) =>
        voice.localService && voice.lang.toLowerCase().split(/[-_]/)[0] === language;
      const voices = speech?.getVoices().filter(own) ?? [];
      this.voice = voices.find((voice) => voice.default) ?? voices[0] ?? null;
      this.can = this.voice !== null;
    };
    look();
    speech?.addEventListener?.('voiceschanged', look);
    return () => {
      speech?.removeEventListener?.('voiceschanged', look);
      this.stop();
    };
  }

  /** Read these sentences, one after another. */
  read(sentences: readonly string[]) {
    this.stop();
    if (!this.speech || !this.voice || sentences.length === 0) return;
    const turn = this.turn;
    this.reading = true;
    for (const [n, sentence] of sentences.entries()) {
      const utterance = this.uttered(sentence);
      utterance.voice = this.voice;
      utterance.lang = this.voice.lang;
      const over = () => {
        if (turn === this.turn) this.reading = false;
      };
      if (n === sentences.length - 1) utterance.onend = over;
      utterance.onerror = over;
      this.speech.speak(utterance);
    }
  }

  /** Be silent. */
  stop() {
    this.turn += 1;
    if (!this.reading) return;
    this.reading = false;
    this.speech?.cancel();
  }
}

/** What is read of a step, in the order in which it stands there. */
export function spoken(card: Card): string[] {
  const open = card.open ? [card.open.title, ...card.open.lines] : [];
  const figures = card.figures.map(({ label, value }) => `${label}: ${value.spoken}`);
  const caution = card.caution ? [card.caution.title] : [];
  const all = [card.title, card.which_spoken, ...open, ...figures, ...card.how, ...caution];
  return all.map((text) => text.trim()).filter((text) => text !== '');
}
