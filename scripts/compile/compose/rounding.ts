const significant = 12;

/** A number at twelve significant digits, which is where bytes stop depending on the order of additions; null for NaN and infinities. */
export function settle(value: number | null | undefined): number | null {
  if (value === null || value === undefined || !Number.isFinite(value)) return null;
  return Number(value.toPrecision(significant)) + 0;
}

/** Every number of a JSON value at twelve significant digits; what is no finite number becomes null. */
export function settleAll(value: unknown): unknown {
  if (typeof value === 'number') return settle(value);
  if (Array.isArray(value)) return value.map(settleAll);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(
    Object.entries(value).flatMap(([key, each]) => (each === undefined ? [] : [[key, settleAll(each)]])),
  );
}
