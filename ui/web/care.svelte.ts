// What a browser leaves to its maker: its promise to keep what is kept here, the app itself kept
// whole by the service worker, and how it is installed.

import type { Care } from '../src/lib/shell';

/** Of the room the browser gives, so much is left when hardly any is. */
const LITTLE = 20_000_000;
const BUILD = 'lapwork-build';

interface InstallPrompt extends Event {
  prompt(): Promise<unknown>;
}

interface LaunchQueue {
  setConsumer(take: (launch: { files: FileSystemFileHandle[] }) => void): void;
}

function deviceOf(): Care['device'] {
  const { userAgent, maxTouchPoints } = navigator;
  // An iPad says that it is a Mac.
  if (/iPhone|iPad/.test(userAgent) || (/Mac/.test(userAgent) && maxTouchPoints > 1)) {
    return 'iphone';
  }
  return /Android/.test(userAgent) ? 'android' : 'other';
}

export class Keeper implements Care {
  kept = $state<boolean | null>(null);
  offline = $state(false);
  installed = $state(matchMedia('(display-mode: standalone)').matches);
  install = $state.raw<(() => void) | null>(null);
  updated = $state(false);
  low = $state(false);
  readonly device = deviceOf();

  private hasAsked = false;

  /** Begin to see to it; `take` is given what the system hands to the app. */
  async begin(take: (file: File) => void) {
    window.addEventListener('beforeinstallprompt', (event) => {
      event.preventDefault();
      const asked = event as InstallPrompt;
      this.install = () => void asked.prompt().then(() => (this.install = null));
    });
    window.addEventListener('appinstalled', () => (this.installed = true));
    const { launchQueue } = window as { launchQueue?: LaunchQueue };
    launchQueue?.setConsumer(({ files: [first] }) => void first?.getFile().then(take));
    await Promise.all(
      [this.whole(), this.weigh(), this.shared(take)].map((one) => one.catch(() => null)),
    );
  }

  keep() {
    void navigator.storage?.persist?.().then((kept) => (this.kept = kept));
  }

  /** The maker has begun to keep something: now the browser is asked, once. */
  begun() {
    if (this.hasAsked) return;
    this.hasAsked = true;
    if (!this.kept) this.keep();
    setTimeout(() => void this.weigh(), 5000);
  }

  private async weigh() {
    this.kept = (await navigator.storage?.persisted?.()) ?? null;
    const { quota, usage } = (await navigator.storage?.estimate?.()) ?? {};
    this.low = quota !== undefined && usage !== undefined && quota - usage < LITTLE;
  }

  /** Have the service worker keep the whole app. */
  private async whole() {
    if (!navigator.serviceWorker) return;
    const serving = navigator.serviceWorker.controller;
    const at = await navigator.serviceWorker.register('./sw.js', { updateViaCache: 'none' });
    if (at.waiting && serving) this.takeOver(at.waiting);
    const { active } = await navigator.serviceWorker.ready;
    this.offline = true;
    // The worker this page came from is asked. One that takes over meanwhile loads the page again,
    // and it is the page loaded then that says so.
    const worker = serving ?? active;
    if (worker) this.tellUpdate(worker);
  }

  /** A newer app waits; nothing is being worked yet. */
  private takeOver(waiting: ServiceWorker) {
    let isTaken = false;
    navigator.serviceWorker.addEventListener('controllerchange', () => {
      if (isTaken) return;
      isTaken = true;
      location.reload();
    });
    waiting.postMessage('take over');
  }

  private tellUpdate(active: ServiceWorker) {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }: MessageEvent<string>) => {
      const before = localStorage.getItem(BUILD);
      localStorage.setItem(BUILD, data);
      this.updated = before !== null && before !== data;
    };
    active.postMessage('build', [port2]);
  }

  /** A file shared with the app, which the service worker has put aside. */
  private async shared(take: (file: File) => void) {
    if (location.search !== '?shared') return;
    history.replaceState(history.state, '', location.pathname);
    const cache = await caches.open('lapwork-shared');
    const name = location.origin + location.pathname.replace(/[^/]*$/, 'shared');
    const answer = await cache.match(name);
    await cache.delete(name);
    if (!answer) return;
    const called = decodeURIComponent(answer.headers.get('X-Name') ?? '');
    take(new File([await answer.blob()], called || 'throw.jsonl'));
  }
}
