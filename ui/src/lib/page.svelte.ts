// The page itself: how wide it is, its theme, text size and language.
//
// The styles use classes of the page's root: `large` text; a `broad` window, in which a screen
// has two columns; and a `wide` one, in which the tabs are beside the screen. A broad window is
// also wide. Both widths are defined here and nowhere else.

import type { Prefs } from './types';

/** With larger letters, given in per cent, a window has to be larger to be broad. */
const broad = (text: number) => `(min-width: ${Math.max(900, text * 8)}px)`;
const wide = (text: number) => `${broad(text)}, (min-width: 640px) and (max-height: 520px)`;
const DARK = '(prefers-color-scheme: dark)';
/** Letters are large from this size on, in per cent. */
const LARGE = 140;

export class Page {
  wide = $state(false);

  private prefs: Prefs | null = null;
  /** The size of letters by which the window is measured. */
  private text = 0;
  /** What ends measuring it. */
  private unmeasure: (() => void)[] = [];

  /** Follow the window's size and the device's theme, from now on. */
  begin() {
    this.measure(100);
    this.follow(DARK, () => this.dress());
  }

  private measure(text: number) {
    if (text === this.text) return;
    this.text = text;
    for (const end of this.unmeasure) end();
    this.unmeasure = [
      this.follow(broad(text), (is) => this.mark('broad', is)),
      this.follow(wide(text), (is) => {
        this.mark('wide', is);
        this.wide = is;
      }),
    ];
  }

  /** Dress the page as is preferred, in this language. */
  wear(prefs: Prefs, language: string) {
    this.prefs = prefs;
    document.documentElement.lang = language;
    this.dress();
  }

  private dress() {
    if (!this.prefs) return;
    const { theme, text } = this.prefs;
    const dark = theme === 'dark' || (theme === 'auto' && matchMedia(DARK).matches);
    const page = document.documentElement;
    page.dataset.theme = dark ? 'dark' : 'light';
    page.style.fontSize = `${text}%`;
    this.mark('large', text >= LARGE);
    this.measure(text);
  }

  private mark(name: string, is: boolean) {
    document.documentElement.classList.toggle(name, is);
  }

  private follow(query: string, turn: (matches: boolean) => void) {
    const media = matchMedia(query);
    turn(media.matches);
    const change = () => turn(media.matches);
    media.addEventListener('change', change);
    return () => media.removeEventListener('change', change);
  }
}
