/** Rates of change a million years from the state of a row to the state of a column; the diagonal does not count. */
export type ChangeRates = readonly (readonly number[])[];

/** Every state changes to each other one at the same rate (Lewis 2001, Systematic Biology 50: 913–925, whose rate this is). */
export function equalRates(states: number, rate: number): number[][] {
  return fillRates(states, () => rate);
}

/** A state changes to its neighbours in the list only, at one rate. */
export function orderedRates(states: number, rate: number): number[][] {
  return fillRates(states, (from, to) => (Math.abs(from - to) === 1 ? rate : 0));
}

/** Two states, the second gained and lost at rates of their own. */
export function gainAndLossRates(gain: number, loss: number): number[][] {
  return fillRates(2, (from) => (from === 0 ? gain : loss));
}

function fillRates(states: number, of: (from: number, to: number) => number): number[][] {
  return Array.from({ length: states }, (_, from) =>
    Array.from({ length: states }, (_cell, to) => (from === to ? 0 : of(from, to))),
  );
}

/** Terms of the series, enough for every digit of a step whose changes are half a change or fewer. */
const seriesTerms = 18;

/**
 * Probabilities of each state after a time, from each state before it: the exponential of the rates by its series on a short step
 * that is doubled again and again (Moler and Van Loan 2003, SIAM Review 45: 3–49, method 3); in one line where all rates are
 * alike (Lewis 2001). Throws for a rate or a time below 0.
 */
export function changeProbabilities(rates: ChangeRates, timeMyr: number): Float64Array[] {
  if (!(timeMyr >= 0 && timeMyr < Infinity)) throw new Error(`a time must be 0 Myr or more, got ${timeMyr}`);
  const only = findOnlyRate(rates);
  if (only !== undefined && only >= 0 && only < Infinity)
    return equalProbabilities(rates.length, only * timeMyr);
  const wrong = rates.flatMap((row, from) =>
    row.filter((rate, to) => from !== to && !(rate >= 0 && rate < Infinity)),
  );
  if (wrong.length > 0) throw new Error(`a rate of change must be 0 or more, got ${wrong[0]}`);
  const changes = rates.map((row, from) => {
    const leaving = row.reduce((sum, rate, to) => (from === to ? sum : sum + rate), 0);
    return Float64Array.from(row, (rate, to) => timeMyr * (from === to ? -leaving : rate));
  });
  const most = Math.max(...changes.map((row, state) => -row[state]!));
  const doublings = Math.max(0, Math.ceil(Math.log2(2 * most)));
  let result = series(changes.map((row) => row.map((change) => change / 2 ** doublings)));
  for (let k = 0; k < doublings; k++) result = product(result, result);
  return result;
}

/** The rate of every change where it is the same for all; undefined otherwise. */
function findOnlyRate(rates: ChangeRates): number | undefined {
  const first = rates[0]?.[1];
  const isOnly = rates.every((row, from) => row.every((rate, to) => from === to || rate === first));
  return isOnly ? first : undefined;
}

/** To any other state 1/k·(1 − exp(−k·changes)); what is left stays. */
function equalProbabilities(states: number, changes: number): Float64Array[] {
  const moved = -Math.expm1(-states * changes) / states;
  return Array.from({ length: states }, (_, from) => {
    const row = new Float64Array(states).fill(moved);
    row[from] = 1 - (states - 1) * moved;
    return row;
  });
}

function series(step: readonly Float64Array[]): Float64Array[] {
  let term = step.map((_, k) => Float64Array.from(step, (_row, j) => Number(j === k)));
  const sum = term.map((row) => row.slice());
  for (let order = 1; order <= seriesTerms; order++) {
    term = product(term, step).map((row) => row.map((value) => value / order));
    term.forEach((row, k) => row.forEach((value, j) => (sum[k]![j]! += value)));
  }
  return sum;
}

function product(one: readonly Float64Array[], other: readonly Float64Array[]): Float64Array[] {
  return one.map((row) =>
    row.map((_, column) => row.reduce((sum, value, k) => sum + value * other[k]![column]!, 0)),
  );
}
