import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { compileChanged, findingsAfter, replaced, type Change } from '../fixtures/changed-lineage.ts';

const rights = 'alt: { en: a skull }, rights: { image: Bo Heath, licence: CC0-1.0 }';

/** The small lineage with one picture on a specimen, on which the points of that specimen were placed. */
const withPicture = (file: string, content: Change): Record<string, Change> => ({
  'specimens.yaml': replaced(
    'landmarks: { view: left, sheet: sheets/landmarks.csv, scale:',
    `pictures: [{ file: ${file}, ${rights} }]\n  landmarks: { view: left, sheet: sheets/landmarks.csv, picture: ${file}, scale:`,
  ),
  'sheets/landmarks.csv': replaced('250,-50', '250,50'),
  [file]: content,
});

/** A JPEG by other hands (libvips): what it shows is 700 wide and 100 high, however it lies in the file. */
const jpeg = (orientation: number, position = false) =>
  sharp({
    create: {
      width: orientation >= 5 ? 100 : 700,
      height: orientation >= 5 ? 700 : 100,
      channels: 3,
      background: '#a87',
    },
  })
    .withExif(position ? { IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1' } } : {})
    .withMetadata({ orientation })
    .jpeg()
    .toBuffer();

describe('messages about the files of pictures', () => {
  it('a file only ends like a picture', async () => {
    expect(await findingsAfter(withPicture('images/a.jpg', 'not a picture'))).toMatchInlineSnapshot(`
      "specimens.yaml:30:22-34 error not-a-picture
        "images/a.jpg" is no picture that a browser shows, or breaks off
        save it again as PNG, JPEG, WebP, AVIF or SVG"
    `);
  });

  it('a picture breaks off', async () => {
    const whole = await jpeg(1);
    expect(await findingsAfter(withPicture('images/a.jpg', whole.subarray(0, 60)))).toMatchInlineSnapshot(`
      "specimens.yaml:30:22-34 error not-a-picture
        "images/a.jpg" is no picture that a browser shows, or breaks off
        save it again as PNG, JPEG, WebP, AVIF or SVG"
    `);
  });

  it('a picture says where it was taken', async () => {
    expect(await findingsAfter(withPicture('images/a.jpg', await jpeg(1, true)))).toMatchInlineSnapshot(`
      "specimens.yaml:30:22-34 warning picture-position
        "images/a.jpg" says where it was taken; pages show it without that
        take the position out of the file too before the folder is shared: exact places invite looting"
    `);
  });

  it('a drawing among the pictures holds a script', async () => {
    const drawing = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 700 100"><script>1</script></svg>';
    expect(await findingsAfter(withPicture('images/a.svg', drawing))).toMatchInlineSnapshot(`
      "specimens.yaml:30:22-34 error active-drawing
        the drawing "images/a.svg" holds something that could run or reach out: <script
        save it again with lines, areas and text alone"
    `);
  });

  it('a point lies outside a picture that lies on its side', async () => {
    const sheet = (text: string) => text.replace('250,-50', '50,250');
    const changes = { ...withPicture('images/a.jpg', await jpeg(6)), 'sheets/landmarks.csv': sheet };
    expect(await findingsAfter(changes)).toMatchInlineSnapshot(`
      "sheets/landmarks.csv:4:14-20 error outside-picture
        "eye-front" at 50, 250 lies outside its picture of 700 × 100
        digitise the point again, or name the picture that it was taken from"
    `);
  });

  it('a sheet has a landmark that is not in the scheme', async () => {
    expect(
      await findingsAfter({
        'sheets/landmarks.csv': replaced('eye-front.x,eye-front.y', 'eye-frnt.x,eye-frnt.y'),
      }),
    ).toMatchInlineSnapshot(`
      "sheets/landmarks.csv:1:41-51 error unknown-id
        unknown landmark: "eye-frnt"; did you mean "eye-front"?
        name a landmark of scheme.yaml, or define it there"
    `);
  });
});

describe('a compiled picture', () => {
  it.each([1, 3, 6, 8])('has the size at which it is seen, however it lies: orientation %s', async (turn) => {
    const { compiled } = await compileChanged(withPicture('images/a.jpg', await jpeg(turn)));
    const [picture] = compiled!.specimens.find(({ id }) => id === 'hm-4')!.pictures!;
    expect([picture!.width, picture!.height]).toEqual([700, 100]);
  });

  it('has the points that were placed on it, the mean of the repeats, with the bar that was measured', async () => {
    const sheet = (text: string) =>
      `${text.replace('250,-50', '250,50')}hm-4,2,12,10,250,54,640,0,90,30,300,30\n`;
    const changes = { ...withPicture('images/a.jpg', await jpeg(1)), 'sheets/landmarks.csv': sheet };
    const { compiled } = await compileChanged(changes);
    const { marks } = compiled!.specimens.find(({ id }) => id === 'hm-4')!.pictures![0]!;
    const at = (id: string) => marks!.landmarks.find((each) => each.id === id)!.at;
    expect(at('snout-tip')).toEqual([11, 10]);
    expect(at('eye-front')).toEqual([250, 52]);
    expect(marks).toMatchObject({
      scale: { from: [0, 0], to: [100, 0], mm: 10 },
      mmPerPx: 0.1,
      mirrored: false,
    });
  });
});
