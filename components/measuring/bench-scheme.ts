import type { CompiledLineage, CompiledScheme } from '../../scripts/compile/contract.ts';

/** A landmark as the bench names it. */
export interface BenchLandmark {
  readonly id: string;
  readonly name: string;
  readonly definition?: string;
}

export type BenchMeasurement = Omit<CompiledScheme['measurements'][number], 'name'> & {
  readonly name: string;
};
export type BenchAxis = Omit<CompiledScheme['axes'][number], 'name'> & { readonly name: string };

/** What is measured in one view of one lineage, in one language. */
export interface BenchScheme {
  readonly lineage: string;
  readonly title: string;
  readonly view: string;
  readonly viewName: string;
  readonly landmarks: readonly BenchLandmark[];
  readonly measurements: readonly BenchMeasurement[];
  readonly axes: readonly BenchAxis[];
  readonly traits: readonly BenchTrait[];
}

/** A trait with the measurements that it is made of. */
export interface BenchTrait {
  readonly id: string;
  readonly label: string;
  readonly kind: string;
  readonly unit: string;
  readonly measurements: readonly string[];
  readonly times: number;
}

type Texts = Readonly<Record<string, string>>;

/** The schemes of a lineage, one for each view that a picture can show; none where the lineage has no landmarks. */
export function benchSchemes(
  { lineage, about, scheme, traits }: CompiledLineage,
  language: string,
): BenchScheme[] {
  if (!scheme) return [];
  const say = (texts: Texts | undefined, otherwise: string) =>
    texts?.[language] ?? texts?.[about.languages[0]!] ?? otherwise;
  const named = <T extends { id: string; name?: Texts | undefined }>(each: T) => ({
    ...each,
    name: say(each.name, each.id),
  });
  return scheme.views
    .filter(({ dimensions }) => dimensions === 2)
    .map((view) => ({
      lineage,
      title: say(about.title, lineage),
      view: view.id,
      viewName: say(view.name, view.id),
      landmarks: scheme.landmarks
        .filter(({ views }) => !views || views.includes(view.id))
        .map(({ id, name, definition }) => ({
          id,
          name: say(name, id),
          ...(definition ? { definition: say(definition, '') } : {}),
        })),
      measurements: scheme.measurements.map(named),
      axes: scheme.axes.map(named),
      traits: scheme.traits.flatMap(({ trait, measurements, times }) => {
        const own = traits.find(({ id }) => id === trait);
        if (!own) return [];
        return [
          { id: trait, label: say(own.label, trait), kind: own.kind, unit: own.unit, measurements, times },
        ];
      }),
    }));
}

/** A scheme of names that the user typed, and the straight lengths between them that were asked for. */
export function ownScheme(
  names: readonly string[],
  lengths: readonly { readonly from: string; readonly to: string }[],
): BenchScheme {
  const landmarks = landmarksNamed(names);
  const known = new Map(landmarks.map(({ id, name }) => [id, name]));
  return {
    lineage: '',
    title: '',
    view: '',
    viewName: '',
    landmarks,
    measurements: lengths
      .filter(({ from, to }) => from !== to && known.has(from) && known.has(to))
      .map(({ from, to }) => ({
        id: `${from} ${to}`,
        name: `${known.get(from)!} – ${known.get(to)!}`,
        from,
        to,
      })),
    axes: [],
    traits: [],
  };
}

/** Names as landmarks: an id in the form that records take, each once; a name without a letter or digit is left out. */
export function landmarksNamed(names: readonly string[]): BenchLandmark[] {
  const byId = new Map<string, string>();
  for (const name of names.map((each) => each.trim())) {
    const id = idOfName(name);
    if (id !== '' && !byId.has(id)) byId.set(id, name);
  }
  return [...byId].map(([id, name]) => ({ id, name }));
}

/** A name in the form of an id: plain small letters, digits and hyphens, a letter first; empty where nothing is left. */
export function idOfName(name: string): string {
  const plain = name
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return /^[0-9]/.test(plain) ? `p${plain}` : plain;
}
