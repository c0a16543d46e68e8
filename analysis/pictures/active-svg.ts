/** What in a drawing could run or reach out; undefined for one that only draws. Looks at the text, before anything reads it. */
export function activeContent(svg: string): string | undefined {
  const found = [
    /<\s*(?:[\w-]+:)?script\b/i,
    /<\s*(?:[\w-]+:)?foreignObject\b/i,
    /<\s*(?:[\w-]+:)?(?:iframe|embed|object|audio|video)\b/i,
    /\bon[a-z]+\s*=\s*["']/i,
    /javascript\s*:/i,
    /<!ENTITY\b/i,
    /\b(?:xlink:)?href\s*=\s*["']\s*(?!#|data:image\/(?:png|jpeg|webp|gif)[;,])[^"'\s]/i,
    /url\(\s*["']?\s*(?:https?:)?\/\//i,
    /@import\b/i,
  ]
    .map((pattern) => pattern.exec(svg)?.[0])
    .find((match) => match !== undefined);
  return found?.trim().slice(0, 40);
}
