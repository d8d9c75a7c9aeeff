// A photo dropped on the window, taken by the screen that is open.

import { store } from './store.svelte';

/** Take a dropped photo for as long as the screen is there and `free`. */
export function takeDropped(free: () => boolean, take: (photo: string) => void) {
  $effect(() => {
    if (!free()) return;
    store.onphoto = () => void store.photo(true).then((photo) => photo !== null && take(photo));
    return () => (store.onphoto = null);
  });
}
