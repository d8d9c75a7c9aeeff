// The page itself: how wide it is, its theme, text size and language.
//
// The styles use classes of the page's root: `large` text; a `broad` window, in which a screen
// has two columns; and a `wide` one, in which the tabs are beside the screen. A broad window is
// also wide. Both widths are defined here and nowhere else.

import type { Prefs } from './types';

const BROAD = '(min-width: 900px)';
const WIDE = `${BROAD}, (min-width: 640px) and (max-height: 520px)`;
const DARK = '(prefers-color-scheme: dark)';
/** Letters are large from this size on, in per cent. */
const LARGE = 140;

export class Page {
  wide = $state(false);

  private prefs: Prefs | null = null;

  /** Follow the window's size and the device's theme, from now on. */
  begin() {
    this.follow(BROAD, (is) => this.mark('broad', is));
    this.follow(WIDE, (is) => {
      this.mark('wide', is);
      this.wide = is;
    });
    this.follow(DARK, () => this.dress());
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
  }

  private mark(name: string, is: boolean) {
    document.documentElement.classList.toggle(name, is);
  }

  private follow(query: string, turn: (matches: boolean) => void) {
    const media = matchMedia(query);
    turn(media.matches);
    media.addEventListener('change', () => turn(media.matches));
  }
}
