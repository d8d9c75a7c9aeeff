// A photo dropped on the window goes to the screen that is open.

import { handing } from './store';

/** Take a dropped photo for as long as the screen is there and `free`. */
export function takeDropped(free: () => boolean, take: (photo: string) => void) {
  $effect(() => {
    if (!free()) return;
    handing.onphoto = () => void handing.photo(true).then((photo) => photo !== null && take(photo));
    return () => (handing.onphoto = null);
  });
}
