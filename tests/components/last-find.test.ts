import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { lastFindOf } from '../../components/evidence/last-find.ts';
import { voiceOf } from '../../components/messages/say.ts';
import { sayStatement } from '../../components/messages/say-statement.ts';
import { compileLineage } from '../../scripts/compile/index.ts';

const folder = fileURLToPath(new URL('../../content/reed-trunks', import.meta.url));
const { compiled } = await compileLineage(folder);
const taxon = (id: string) => compiled!.taxa.find((each) => each.id === id)!;

test('an animal of two beds is said to have lived on as long as nineteen times the time between them', () => {
  // Strauss and Sadler 1989, equation 20: 0.05^(−1) − 1 = 19; 49.5 − 19 · 2.5 = 2 Ma
  const said = lastFindOf(taxon('prorhina-vetusta'))!;
  expect(sayStatement(said, voiceOf('en'))).toBe(
    'If finds fall evenly and at random through its time, those of its 2 beds let it have lived until 2 Ma, at 95% confidence.',
  );
  for (const language of ['es', 'ar']) expect(sayStatement(said, voiceOf(language))).toMatch(/2/);
});

test('nothing is said of the end of an animal that lives, or is known from one bed', () => {
  for (const each of compiled!.taxa)
    if (each.living || each.finds.horizons.length < 2) expect(lastFindOf(each), each.id).toBeUndefined();
  expect(compiled!.taxa.filter((each) => lastFindOf(each)).length).toBeGreaterThan(0);
});
