import type { AnalysedLineage } from '../analyse/lineage.ts';
import type { CompiledLineage, CompiledTemplate } from '../contract.ts';
import { drawTaxa } from '../draw/drawings.ts';
import { withOwnDrawings } from '../own-drawing/compose-own-drawing.ts';
import type { AuthoredLineage } from '../schema/index.ts';
import type { DrawingTemplate } from '../../../analysis/geometry/index.ts';
import { composeCharacters, composeMatrixFit } from './compose-characters.ts';
import { composeChart } from './chart.ts';
import { composeCompleteness } from './compose-completeness.ts';
import { composeCongruence, composeGhosts } from './compose-congruence.ts';
import { composeBedOrder } from './compose-ages.ts';
import { composeHorizons, composeSpecimens, composeTaxa, composeTrees } from './compose-records.ts';
import { composeTraits } from './compose-traits.ts';
import { resultDigest } from './digest.ts';
import { printReferences } from './references.ts';
import { composeSection } from '../section/compose-section.ts';
import { settleAll } from './rounding.ts';
import { composeScheme } from './compose-scheme.ts';
import { composeEditions } from './compose-editions.ts';

/** What is shown besides the records: a preview's stamp, and the templates that drawings hang on. */
export interface Showing {
  preview: boolean;
  templates: readonly DrawingTemplate[];
}

/** The compiled lineage out of everything computed; numbers leave at twelve significant digits and null where there is none. */
export function composeLineage(
  authored: AuthoredLineage,
  contentDigest: string,
  analysed: AnalysedLineage,
  { preview, templates }: Showing,
): CompiledLineage {
  const { records } = analysed.lineage;
  const traits = composeTraits(analysed);
  const taxa = composeTaxa(analysed);
  const section = analysed.section && composeSection(analysed.section, analysed.lineage);
  const drawn = drawTaxa(analysed, traits);
  const completeness = composeCompleteness(analysed);
  const matrixFit = composeMatrixFit(records, analysed.trees);
  const compiled: CompiledLineage = {
    schema: 'lineament.compiled/1',
    lineage: records.folder.id,
    contentDigest,
    resultDigest: resultDigest(traits, section),
    about: aboutOf(authored, preview),
    chart: composeChart(taxa, analysed.trees),
    horizons: composeHorizons(analysed),
    bedOrder: composeBedOrder(analysed),
    taxa,
    specimens: composeSpecimens(analysed),
    references: printReferences(records.references),
    ...(records.glossary.records.length > 0
      ? { glossary: records.glossary.records.map(({ value }) => value) }
      : {}),
    trees: composeTrees(analysed.trees),
    ...(records.characters.records.length > 0
      ? { characters: composeCharacters(records, analysed.trees) }
      : {}),
    ...(matrixFit && { matrixFit }),
    ...(completeness && { completeness }),
    traits,
    ghosts: composeGhosts(analysed.congruence),
    congruence: composeCongruence(analysed.congruence),
    ...(drawn.shapes ? { shapes: drawn.shapes } : {}),
    drawings: withOwnDrawings(drawn.drawings, analysed),
    ...(templates.length > 0 ? { templates: templates.map(plainTemplate) } : {}),
    ...(analysed.lineage.scheme.landmarks.size > 0 ? { scheme: composeScheme(analysed) } : {}),
    ...(section ? { section } : {}),
  };
  return settleAll(compiled) as CompiledLineage; // the same shape with settled numbers
}

function aboutOf(authored: AuthoredLineage, preview: boolean): CompiledLineage['about'] {
  const edition = authored.editions.reduce((latest, each) => (each.number > latest.number ? each : latest));
  return {
    title: authored.title,
    question: authored.question,
    invented: authored.invented,
    languages: authored.languages,
    focus: authored.focus,
    edition: { number: edition.number, date: edition.date, status: edition.status },
    editions: composeEditions(authored.editions),
    credits: authored.credits,
    licence: authored.licence,
    ...(authored.contact === undefined ? {} : { contact: authored.contact }),
    ...(preview ? { preview } : {}),
    ...(authored.sensitive ? { sensitive: authored.sensitive } : {}),
  };
}

/** A template as data of its own: what the reader hands out is frozen, and has names that pages do not need. */
function plainTemplate({
  id,
  view,
  frame,
  parts,
  landmarks,
  pieces,
  shading,
}: DrawingTemplate): CompiledTemplate {
  return structuredClone({ id, view, frame, parts, landmarks, pieces, shading }) as CompiledTemplate; // a copy is not frozen
}
