import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '../../analysis');

function filesIn(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    return statSync(path).isDirectory() ? filesIn(path) : name.endsWith('.ts') ? [path] : [];
  });
}

const files = filesIn(root).map((path) => ({
  name: relative(root, path),
  path,
  text: readFileSync(path, 'utf8'),
}));

test('analysis imports nothing but itself', () => {
  for (const { name, path, text } of files)
    for (const [, from] of text.matchAll(/^(?:import|export)[^;]*? from '([^']+)'/gm)) {
      expect(from!.startsWith('.'), `${name} imports ${from}`).toBe(true);
      expect(relative(root, resolve(path, '..', from!)).startsWith('..'), `${name} imports ${from}`).toBe(
        false,
      );
    }
});

test('analysis uses no clock, no unseeded chance and no document', () => {
  for (const { name, text } of files)
    expect(
      /\b(?:Math\.random|Date\.now|new Date|performance|document|window|process|globalThis)\b/.test(
        stripComments(text),
      ),
      name,
    ).toBe(false);
});

function stripComments(text: string): string {
  return text.replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '');
}
