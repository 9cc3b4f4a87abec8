import { describe, expect, it } from 'vitest';
import { whyAir } from '../../../../src/emit/text/why-air.ts';
import { barePlan } from '../../../generated/bare-plan.ts';
import { PLAIN_MIST } from '../../../generated/plain-plan.ts';
import { shelfCare } from '../../../generated/shelf-care.ts';

const bare = barePlan(
  shelfCare({ devices: [], enclosures: [] }),
  { feeding: [], rotation: [], stock: [] },
  '2027-01-01',
);

function airWith(airborneShare: number): string {
  const model = { ...PLAIN_MIST.model, airborneShare };
  return whyAir({ ...bare, misting: [{ ...PLAIN_MIST, enclosure: 'fern', model }] }, 'fern') ?? '';
}

describe('where the numbers of the air come from', () => {
  it('does not lay a share at the file’s door that stands where it says nothing', () => {
    const lines = (share: number) => /before it lands: (.*)\n +(.*)\n/.exec(airWith(share))?.slice(1);
    expect(lines(0)).toEqual(['0 %', 'taken where the file says no airborne: drops fall or land']);
    expect(lines(1)).toEqual(['100 %', 'taken of a fogger where the file says no airborne: fog floats']);
    expect(lines(0.1)).toEqual(['10 %', 'said by your file']);
  });
});
