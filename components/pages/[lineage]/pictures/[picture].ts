import { join } from 'node:path';
import type { APIRoute, GetStaticPaths } from 'astro';
import type { CompiledLineage } from '../../../../scripts/compile/contract.ts';
import { contentFolder } from '../../../../scripts/options.ts';
import { loadLineage, loadLineages } from '../../../lineage/load.ts';
import { makePicture } from '../../../photographs/make-picture.ts';
import { photographsOf } from '../../../photographs/photographs.ts';
import { pictureSizes } from '../../../photographs/picture-sizes.ts';

/** Every size of every picture of a lineage. */
export const getStaticPaths = (async () => {
  const lineages = await loadLineages();
  return lineages.flatMap((lineage) =>
    sizesOf(lineage).map(({ size }) => ({ params: { lineage: lineage.lineage, picture: size.name } })),
  );
}) satisfies GetStaticPaths;

export const GET: APIRoute = async ({ params }) => {
  const lineage = await loadLineage(params['lineage']!);
  const found = sizesOf(lineage).find(({ size }) => size.name === params['picture']);
  if (!found) return new Response(null, { status: 404 });
  const file = join(contentFolder(), lineage.lineage, found.file);
  const made = await makePicture(file, found.size, keptFolder);
  return new Response(new Uint8Array(made), { headers: { 'content-type': `image/${found.size.kind}` } });
};

/** Where sizes are kept between builds; every command runs in the folder of the project. */
const keptFolder = join(process.cwd(), '.lineament', 'pictures');

function sizesOf({ specimens }: CompiledLineage) {
  const pictures = specimens.flatMap(photographsOf).map(({ picture }) => picture);
  const named = pictures.flatMap((picture) =>
    pictureSizes(picture).map((size) => ({ size, file: picture.file })),
  );
  // One file may stand on two specimens of one slab.
  return [...new Map(named.map((each) => [each.size.name, each])).values()];
}
