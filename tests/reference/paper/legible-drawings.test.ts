/**
 * Drawings that can be read: contrast of text at least 4.5 to 1 and of lines at least 3 to 1 on every ground that is used, letters of 7 pt at
 * least. Source: WCAG 2.1, success criteria 1.4.3 and 1.4.11, and its definition of relative luminance (from memory); 7 pt: chosen for print.
 */
import { describe, expect, it } from 'vitest';
import { drawings } from '../../../src/emit/svg/drawings.ts';
import { compiled, HOUSEHOLDS } from '../../examples/every-household.ts';

const POINT_MM = 25.4 / 72;

/** Relative luminance of `#rgb` or `#rrggbb`. */
function luminance(colour: string): number {
  const hex = colour.length === 4 ? [...colour.slice(1)].map((digit) => digit + digit).join('') : colour.slice(1);
  const [red = 0, green = 0, blue = 0] = [0, 2, 4].map((at) => {
    const share = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(one: string, other: string): number {
  const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return ((light ?? 0) + 0.05) / ((dark ?? 0) + 0.05);
}

function coloursOf(svg: string, pattern: RegExp): readonly string[] {
  return [...new Set([...svg.matchAll(pattern)].map(([, colour]) => colour ?? ''))].filter((each) =>
    each.startsWith('#'),
  );
}

const SVGS = HOUSEHOLDS.flatMap((household) => {
  const { plan } = compiled(household);
  if (!plan) throw new Error(`${household.name} has no plan`);
  return drawings(plan).map(({ path, content }) => [`${household.name}/${path}`, String(content)] as const);
});

it('the measure of contrast is that of the standard: 21 to 1 for black on white, 4.48 for #777 on white', () => {
  expect(contrast('#000', '#fff')).toBeCloseTo(21, 5);
  expect(contrast('#777777', '#fff')).toBeCloseTo(4.48, 2);
});

describe.each(SVGS)('%s', (_, svg) => {
  const texts = coloursOf(svg, /<text[^>]* fill="([^"]+)"/g);
  const lines = coloursOf(svg, /stroke="([^"]+)"/g);

  it('has text that stands out on white', () => {
    expect(svg).toContain('<text');
    for (const text of texts) expect(contrast(text, '#fff'), text).toBeGreaterThanOrEqual(4.5);
  });

  it('has lines that stand out on white', () => {
    expect(lines.length).toBeGreaterThan(0);
    for (const line of lines) expect(contrast(line, '#fff'), line).toBeGreaterThanOrEqual(3);
  });

  it('has no letter under 7 pt', () => {
    const sizes = [...svg.matchAll(/font-size="([\d.]+)"/g)].map(([, size]) => Number(size));
    expect(sizes.length).toBeGreaterThan(0);
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(7 * POINT_MM - 0.001);
  });
});
