/** Texts that were fetched, by address: what came once is not asked for again. */
const texts = new Map<string, Promise<string>>();
const known = new Map<string, string>();

/** The text at an address. Rejects where it cannot be had; the next wish asks again. */
export function readText(address: string): Promise<string> {
  const coming = texts.get(address) ?? fetchText(address);
  texts.set(address, coming);
  coming.then(
    (text) => known.set(address, text),
    () => texts.delete(address),
  );
  return coming;
}

async function fetchText(address: string): Promise<string> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${address} answers ${response.status}`);
  return response.text();
}

/** The same at once, for a page that is about to be printed: the browser waits for nothing that comes later. */
export function readTextNow(address: string): string {
  const text = known.get(address);
  if (text !== undefined) return text;
  const request = new XMLHttpRequest();
  request.open('GET', address, false);
  request.send();
  if (request.status !== 200) throw new Error(`${address} answers ${request.status}`);
  known.set(address, request.responseText);
  return request.responseText;
}
