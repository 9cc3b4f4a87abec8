/** The pictures of the README are what the tool draws now; `npm run pictures` draws them anew. */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { PICTURES, readmePictures } from './readme-pictures.ts';

const README = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');
const drawn = readmePictures();

if (process.env.PICTURES_WRITE) {
  mkdirSync(PICTURES, { recursive: true });
  for (const [name, svg] of drawn) writeFileSync(new URL(name, PICTURES), svg);
}

describe('the pictures of the README', () => {
  it.each([...drawn])('%s is what the tool draws', (name, svg) => {
    expect(readFileSync(new URL(name, PICTURES), 'utf8')).toBe(svg);
  });

  it('are all shown, with words for those who cannot see them, and there are no others', () => {
    const shown = [...README.matchAll(/!\[([^\]]*)\]\(examples\/pictures\/([^)]+)\)/g)];
    expect(shown.map(([, , name]) => name).sort()).toEqual([...drawn.keys()].sort());
    expect(readdirSync(PICTURES).sort()).toEqual([...drawn.keys()].sort());
    for (const [, alt = '', name] of shown) expect(alt.length, name).toBeGreaterThan(30);
  });

  it.each([...drawn])('%s is small, and black on white of its own, so that a dark page shows it too', (_, svg) => {
    expect(svg.length).toBeLessThan(50_000);
    expect(svg).toMatch(/<rect width="[\d.]+" height="[\d.]+" fill="#fff"\/>/);
    expect(svg).not.toMatch(/<script|<image|href=/);
  });
});
