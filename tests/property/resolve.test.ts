/** Any household resolves, or is refused with a place; nothing that a keeper can write makes reading or resolving throw. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Diagnostic } from '../../src/diagnostics/diagnostic.ts';
import { resolveText } from '../shipped-profiles.ts';
import { Draw, generateHousehold, SITES } from './household-generator.ts';
import { KINDS } from './kept-species.ts';

const SEED = 20270101;

/** Problems that stop a household, in words that name where each stands. */
function withoutPlace(diagnostics: readonly Diagnostic[]): readonly string[] {
  return diagnostics.filter(({ weight, place }) => weight === 'error' && place === null).map(({ code }) => code);
}

describe('generated households', () => {
  it('resolve without an error, and the same text twice alike', () => {
    fc.assert(
      fc.property(fc.nat(1_000_000), (seed) => {
        const text = generateHousehold(seed);
        const { care, diagnostics } = resolveText(text);
        expect(diagnostics.filter(({ weight }) => weight === 'error')).toEqual([]);
        expect(JSON.stringify(care)).toBe(JSON.stringify(resolveText(generateHousehold(seed)).care));
      }),
      { numRuns: 40, seed: SEED },
    );
  });

  it('keep every target between what its file says and a record of it', () => {
    fc.assert(
      fc.property(fc.nat(1_000_000), (seed) => {
        const { care } = resolveText(generateHousehold(seed));
        for (const enclosure of care?.enclosures ?? []) {
          const paths = enclosure.targetRecords.map(({ path }) => path);
          expect(new Set(paths).size).toBe(paths.length);
          for (const { path, origin, unit } of enclosure.targetRecords) {
            expect(unit).toMatch(/^(1|°C|°|min|s|h|d|text)$/);
            const place = care?.placeOfTarget(enclosure.id, path) ?? null;
            if (origin.kind === 'default') expect(origin.why).toBeTruthy();
            else expect([place?.file, place?.line]).toEqual([origin.file, origin.line]);
          }
          const { peak, day, mean } = enclosure.targets.humidity;
          if (peak && (day ?? mean)) expect(peak[0]).toBeGreaterThanOrEqual((day ?? mean)?.[0] ?? 0);
          for (const { stage } of enclosure.stages)
            expect(enclosure.targets.stages[stage]?.feeds.length).toBeGreaterThan(0);
        }
      }),
      { numRuns: 30, seed: SEED + 1 },
    );
  });

  it('come from every zone and every species', () => {
    const texts = Array.from({ length: 200 }, (_, seed) => generateHousehold(seed));
    for (const [zone] of SITES) expect(texts.some((text) => text.includes(zone))).toBe(true);
    for (const { id } of KINDS) expect(texts.some((text) => text.includes(`species: ${id}`))).toBe(true);
  });
});

describe('spoilt households', () => {
  it('resolve or are refused with a place, whatever line is lost, doubled or torn', () => {
    fc.assert(
      fc.property(
        fc.nat(1_000_000),
        fc.nat(),
        fc.constantFrom('drop', 'double', 'tear', 'swap', 'number', 'word'),
        (seed, at, how) => {
          const { care, diagnostics } = resolveText(
            spoil(generateHousehold(seed, { enclosures: 1 + (seed % 2) }), at, how),
          );
          expect(withoutPlace(diagnostics)).toEqual([]);
          if (!care) expect(diagnostics.some(({ weight }) => weight === 'error')).toBe(true);
          for (const { place } of diagnostics) if (place) expect(place.line).toBeGreaterThanOrEqual(1);
        },
      ),
      { numRuns: 80, seed: SEED + 2 },
    );
  });
});

/** Damages one line of a text. */
function spoil(text: string, at: number, how: string): string {
  const lines = text.split('\n');
  const index = at % lines.length;
  const line = lines[index] ?? '';
  const draw = new Draw(at);
  switch (how) {
    case 'drop':
      return lines.toSpliced(index, 1).join('\n');
    case 'double':
      return lines.toSpliced(index, 0, line).join('\n');
    case 'tear':
      return lines.with(index, line.slice(0, draw.whole(0, line.length))).join('\n');
    case 'swap':
      return lines.with(index, lines[draw.whole(0, lines.length - 1)] ?? '').join('\n');
    case 'number':
      return lines
        .with(
          index,
          line.replace(/\d+/g, () => String(draw.one([0, -1, 7, 1e9, 24]))),
        )
        .join('\n');
    default:
      return lines
        .with(
          index,
          line.replace(/: [a-z-]+/g, () => `: ${draw.one(['none', 'auto', 'adlut', 'pump', 'e1', '~'])}`),
        )
        .join('\n');
  }
}
