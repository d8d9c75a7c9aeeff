// A photo made small by the browser, which reads whatever the device's own pictures are in.
//
// What is kept is drawn anew, so nothing but the picture is in it: no place, no camera.

/** As in the core (`LONGEST_SIDE` and `QUALITY` of `photos.rs`). */
const LONGEST_SIDE = 1600;
const QUALITY = 0.82;
const MOST_BYTES = 40 << 20;

/** It as JPEG, the right way up; null where the browser cannot read it. */
export async function small(file: File): Promise<ArrayBuffer | null> {
  if (file.size > MOST_BYTES) return null;
  try {
    const picture = await createImageBitmap(file, { imageOrientation: 'from-image' });
    const by = Math.min(1, LONGEST_SIDE / Math.max(picture.width, picture.height));
    const width = Math.max(1, Math.round(picture.width * by));
    const height = Math.max(1, Math.round(picture.height * by));
    const paper = new OffscreenCanvas(width, height);
    const pen = paper.getContext('2d');
    if (!pen) return null;
    // What can be seen through is laid on white.
    pen.fillStyle = '#fff';
    pen.fillRect(0, 0, width, height);
    pen.imageSmoothingQuality = 'high';
    pen.drawImage(picture, 0, 0, width, height);
    picture.close();
    const drawn = await paper.convertToBlob({ type: 'image/jpeg', quality: QUALITY });
    return await drawn.arrayBuffer();
  } catch {
    return null;
  }
}
