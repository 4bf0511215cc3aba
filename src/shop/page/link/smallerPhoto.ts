/** The longer side of a photo as it is kept, px: enough to see a chip, small enough for a shop's Wi-Fi. */
const LONGER_SIDE = 1600;

/** A photo made smaller, as JPEG; nothing where the browser cannot read the picture. */
export async function smallerPhoto(file: Blob): Promise<Blob | undefined> {
  try {
    const picture = await createImageBitmap(file);
    const scale = Math.min(1, LONGER_SIDE / Math.max(picture.width, picture.height));
    const canvas = document.createElement('canvas');
    canvas.width = Math.max(1, Math.round(picture.width * scale));
    canvas.height = Math.max(1, Math.round(picture.height * scale));
    canvas.getContext('2d')!.drawImage(picture, 0, 0, canvas.width, canvas.height);
    picture.close();
    return await new Promise((resolve) => canvas.toBlob((blob) => resolve(blob ?? undefined), 'image/jpeg', 0.8));
  } catch {
    return undefined;
  }
}
