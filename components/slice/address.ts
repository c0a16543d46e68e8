/** The parameter of the address that holds the age of the line. */
const parameter = 'cut';

/** Age in Ma that an address asks for; undefined where it asks for none, or for what is no age. */
export function ageIn(search: string): number | undefined {
  const text = new URLSearchParams(search).get(parameter);
  const age = text === null || text.trim() === '' ? NaN : Number(text);
  return Number.isFinite(age) && age >= 0 ? age : undefined;
}

/** The query of an address with this age, every other parameter kept. */
export function searchWithAge(search: string, ageMa: number): string {
  const query = new URLSearchParams(search);
  query.delete(parameter);
  const others = query.toString();
  return `?${others ? `${others}&` : ''}${parameter}=${ageMa}`;
}
