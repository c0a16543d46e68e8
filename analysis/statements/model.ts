import type { SensitivityModel } from '../estimate/index.ts';
import { rounded } from './rounding.ts';
import { statement, type Statement } from './statement.ts';

/** What a statement needs of a fitted model. */
export interface SaidModel {
  readonly name: string;
  readonly compared: readonly { readonly name: string; readonly aicc: number | null }[];
  /** What the author asked for. */
  readonly asked: string;
  /** How much lower the criterion of a trend must be before it is used. */
  readonly margin: number;
}

/**
 * Which model was used and why, with the loser's answer beside: by how much its corrected criterion is higher (one decimal).
 * The trend is used where its criterion is lower by the margin or more, and nothing is compared where an author chose.
 */
export function modelStatement({ name, compared, asked, margin }: SaidModel): Statement {
  if (asked !== 'auto') return statement(`model.asked.${name}`);
  const criterion = (which: string) => compared.find((each) => each.name === which)?.aicc ?? null;
  const [plain, trend] = [criterion('brownian'), criterion('trend')];
  if (!compared.some((each) => each.name === 'trend')) return statement('model.noTime');
  if (plain === null || trend === null) return statement('model.tooFew');
  const better = rounded(plain - trend, 1);
  if (name === 'trend') return statement('model.trend', { better, decimals: 1 });
  return plain - trend > 0
    ? statement('model.brownianNear', { better, margin, decimals: 1 })
    : statement('model.brownian', { worse: rounded(trend - plain, 1), decimals: 1 });
}

/**
 * How a model that is only compared would do: how much higher or lower its corrected criterion is than the used model's, or that
 * its parameter lies on the end of its range, which is no finding. Undefined where a criterion is missing.
 */
export function sensitivityStatement(
  other: Pick<SensitivityModel, 'name' | 'aicc' | 'onBound'>,
  usedCriterion: number | null,
): Statement | undefined {
  if (other.onBound) return statement(`sensitivity.${other.name}.${other.onBound}`);
  if (other.aicc === null || usedCriterion === null) return undefined;
  const worse = other.aicc - usedCriterion;
  return worse >= 0
    ? statement(`sensitivity.${other.name}.worse`, { by: rounded(worse, 1), decimals: 1 })
    : statement(`sensitivity.${other.name}.better`, { by: rounded(-worse, 1), decimals: 1 });
}
