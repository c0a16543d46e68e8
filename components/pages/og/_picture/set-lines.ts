/** Lines of a text, and the size at which they fit. */
export interface SetLines {
  lines: string[];
  size: number;
}

interface Room {
  width: number;
  height: number;
  /** Distance from line to line against the size. */
  leading: number;
  /** Sizes to try, the largest first. */
  sizes: readonly number[];
}

/**
 * The largest of the given sizes at which a text fits its room, broken at spaces into lines of about one length. At the
 * smallest size what is left over is cut with an ellipsis; a single word wider than the room is cut too.
 */
export function setLines(text: string, width: (text: string, size: number) => number, room: Room): SetLines {
  for (const size of room.sizes) {
    const lines = balanced(text, (line) => width(line, size), room.width);
    const fits = lines.length * size * room.leading <= room.height;
    if (fits && lines.every((line) => width(line, size) <= room.width)) return { lines, size };
  }
  const size = room.sizes.at(-1)!;
  const fits = (line: string) => width(line, size) <= room.width;
  const most = Math.max(1, Math.floor(room.height / (size * room.leading)));
  const lines = broken(text, fits);
  const kept = lines.slice(0, most);
  if (lines.length > most) kept[most - 1] = `${kept[most - 1]!}…`;
  return { lines: kept.map((line) => cutTo(line, fits)), size };
}

/** As few lines as the room allows, and of those the breaks that leave the longest line shortest. */
function balanced(text: string, width: (line: string) => number, most: number): string[] {
  let best = broken(text, (line) => width(line) <= most);
  for (let room = most - 8; room > most / 3; room -= 8) {
    const lines = broken(text, (line) => width(line) <= room);
    if (lines.length > best.length) break;
    best = lines;
  }
  return best;
}

function broken(text: string, fits: (line: string) => boolean): string[] {
  const lines: string[] = [];
  for (const word of text.split(/\s+/).filter(Boolean)) {
    const last = lines.at(-1);
    const longer = `${last ?? ''} ${word}`;
    if (last !== undefined && fits(longer)) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

function cutTo(line: string, fits: (line: string) => boolean): string {
  if (fits(line)) return line;
  const letters = [...line.replace(/…$/, '')];
  while (letters.length > 1 && !fits(`${letters.join('').trimEnd()}…`)) letters.pop();
  return `${letters.join('').trimEnd()}…`;
}
