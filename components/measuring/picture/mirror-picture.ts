/** A picture turned over, left for right, as a file of the same kind; throws where the browser cannot draw it. */
export async function mirrorPicture(picture: Blob): Promise<Blob> {
  const image = await createImageBitmap(picture);
  const canvas = new OffscreenCanvas(image.width, image.height);
  const context = canvas.getContext('2d');
  if (!context) throw new Error('the picture cannot be drawn');
  context.translate(image.width, 0);
  context.scale(-1, 1);
  context.drawImage(image, 0, 0);
  image.close();
  const type = picture.type === 'image/jpeg' ? picture.type : 'image/png';
  return canvas.convertToBlob({ type, quality: 0.95 });
}
