// A photo dropped on the window goes to the screen that is open.

import { exporting } from './store';

/** Take a dropped photo for as long as the screen is there and `free`. */
export function acceptDropped(free: () => boolean, take: (photo: string) => void) {
  $effect(() => {
    if (!free()) return;
    exporting.onphoto = () =>
      void exporting.photo(true).then((photo) => photo !== null && take(photo));
    return () => (exporting.onphoto = null);
  });
}
