// Where the photos of the cloths lie that are on the screen.

let source = $state.raw<((photo: string) => string) | null>(null);

/** Set where a photo is found by its name. */
export function setPhotoSource(found: (photo: string) => string) {
  source = found;
}

/** The address of a photo; none where photos are not known. */
export const photoAt = (photo: string): string | undefined => source?.(photo);
