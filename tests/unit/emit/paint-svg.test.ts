import { describe, expect, it } from 'vitest';
import { paintSvg } from '../../../src/emit/paint-svg.ts';
import type { Drawing, Shape } from '../../../src/layout/shapes.ts';

function drawing(...shapes: readonly Shape[]): Drawing {
  return { widthMm: 10, heightMm: 10, title: 'Salt & Pepper <b>"1"</b>', description: 'a < b', shapes };
}

const text = (said: string): Shape => ({
  kind: 'text',
  x: 1,
  y: 2,
  text: said,
  sizePt: 9,
  weight: 'regular',
  anchor: 'start',
  role: 'label',
});

describe('a painted drawing', () => {
  it.each([
    ['<script>alert(1)</script>', '&lt;script&gt;alert(1)&lt;/script&gt;'],
    ['Salt & Pepper', 'Salt &amp; Pepper'],
    ['say "on"', 'say &quot;on&quot;'],
    ['&amp;', '&amp;amp;'],
  ])('escapes %s', (said, painted) => {
    expect(paintSvg(drawing(text(said)))).toContain(`>${painted}</text>`);
  });

  it('escapes its title, its description, labels and marks', () => {
    const svg = paintSvg(drawing({ kind: 'group', label: '"<&', mark: { dial: '"><svg onload="x' }, shapes: [] }));
    expect(svg).toContain('<title id="t">Salt &amp; Pepper &lt;b&gt;&quot;1&quot;&lt;/b&gt;</title>');
    expect(svg).toContain('<desc id="d">a &lt; b</desc>');
    expect(svg).toContain('aria-label="&quot;&lt;&amp;"');
    expect(svg).toContain('data-dial="&quot;&gt;&lt;svg onload=&quot;x"');
    expect(svg.match(/<svg/g)).toHaveLength(1);
  });

  it('writes at most three decimals and no negative zero', () => {
    const svg = paintSvg(
      drawing({ kind: 'circle', x: 1 / 3, y: -1e-9, radius: 2, stroke: { widthMm: 0.1, shade: 'ink' } }),
    );
    expect(svg).toContain('cx="0.333" cy="0" r="2"');
  });

  it('writes every thousandth of a millimetre from -20 to 300 as the shortest decimal fraction', () => {
    const steps = Array.from({ length: 320_001 }, (_, n) => ({ to: 'line', x: n / 1000 - 20, y: 0 }) as const);
    const [, path = ''] = paintSvg(drawing({ kind: 'path', steps })).match(/ d="([^"]*)"/) ?? [];
    // Division of two whole numbers rounds correctly, so that the language itself writes the shortest.
    expect(path === steps.map((_, n) => `L${(n - 20_000) / 1000} 0`).join('')).toBe(true);
  });

  it('defines a hatch once where it is used and not where it is not', () => {
    const hatched: Shape = { kind: 'rect', x: 0, y: 0, width: 1, height: 1, fill: { shade: 'none', hatch: 'rising' } };
    expect(paintSvg(drawing(hatched, hatched)).match(/<pattern/g)).toHaveLength(1);
    expect(paintSvg(drawing(text('a')))).not.toContain('<pattern');
  });
});
