/**
 * A function that keeps its last answers by key, the oldest forgotten first. While an author works, one file changes and
 * the rest are read again as they were; `undefined` is not kept, so a mistake is told again each time.
 */
export function rememberLast<A extends readonly unknown[], V>(
  most: number,
  keyOf: (...given: A) => string,
  make: (...given: A) => V,
): (...given: A) => V {
  const known = new Map<string, V>();
  return (...given) => {
    const key = keyOf(...given);
    const value = known.has(key) ? known.get(key)! : make(...given);
    known.delete(key);
    if (value !== undefined) known.set(key, value);
    if (known.size > most) known.delete(known.keys().next().value!);
    return value;
  };
}

/** A keeper of costly answers: the same question, told by its key, is answered once. */
export function answerOnce<V>(most: number): (key: string, answer: () => V) => V {
  return rememberLast(
    most,
    (key: string, _answer: () => V) => key,
    (_key, answer) => answer(),
  );
}
