/* How exact places are written: names of fields, and coordinates in running text. */

const degrees =
  /\d{1,3}(?:\.\d+)?\s*°\s*(?:\d{1,2}(?:\.\d+)?\s*[′'’]\s*)?(?:\d{1,2}(?:\.\d+)?\s*(?:[″"”]|'')\s*)?[NSEWO](?![\p{L}])/u;
const decimalPair = /(?<![\d.])[-+−]?\d{1,2}\.\d{3,}\s*°?\s*[NS]?\s*[,; ]\s*[-+−]?\d{1,3}\.\d{3,}(?!\d|\.\d)/;
const grid = /\b\d{1,2}[C-HJ-NP-X]\s*\d{5,7}\s+\d{6,8}\b/;

/** The first coordinates in a text, as degrees, a decimal pair, or a UTM reference; undefined where there are none. */
export function findCoordinates(text: string): { start: number; length: number } | undefined {
  for (const pattern of [degrees, decimalPair, grid]) {
    const match = pattern.exec(text);
    if (match) return { start: match.index, length: match[0].length };
  }
  return undefined;
}

const columns =
  /^(?:decimal|verbatim)?[\s_-]*(?:latitude|longitude|lat|lng|coordinates|latitud|latitudine)$|^(?:gps|utm|mgrs|easting|northing)\b/i;

/** True for the header of a column that holds exact places (Darwin Core’s names and the usual short ones). */
export function isPlaceColumn(header: string): boolean {
  return columns.test(header.trim());
}
