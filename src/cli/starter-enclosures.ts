/** An ordinary enclosure of each shipped species, for a starter file: common practice, no source; a keeper corrects it by the own one. */

export interface StarterEnclosure {
  readonly sizeCm: readonly [width: number, depth: number, height: number];
  /** Bare mesh as a share of the walls and the top. */
  readonly openPercent: number;
  readonly planting: 'none' | 'light' | 'medium' | 'dense';
  readonly floor: 'dry' | 'damp-below';
}

const MESH: StarterEnclosure = { sizeCm: [60, 60, 120], openPercent: 33, planting: 'medium', floor: 'dry' };
const DESERT: StarterEnclosure = { sizeCm: [120, 60, 60], openPercent: 30, planting: 'none', floor: 'dry' };
const SNAKE: StarterEnclosure = { sizeCm: [120, 60, 60], openPercent: 8, planting: 'none', floor: 'damp-below' };
const TALL: StarterEnclosure = { sizeCm: [45, 45, 90], openPercent: 18, planting: 'medium', floor: 'dry' };

const ENCLOSURES: Readonly<Record<string, StarterEnclosure>> = {
  'veiled-chameleon': MESH,
  'panther-chameleon': MESH,
  'jacksons-chameleon': { ...MESH, openPercent: 28 },
  'crested-gecko': { ...TALL, sizeCm: [45, 45, 60] },
  'giant-day-gecko': TALL,
  'red-eyed-tree-frog': { ...TALL, sizeCm: [45, 45, 60], openPercent: 12 },
  'dyeing-poison-frog': { sizeCm: [60, 45, 45], openPercent: 8, planting: 'dense', floor: 'dry' },
  'leopard-gecko': { ...DESERT, sizeCm: [90, 45, 45], openPercent: 45 },
  'bearded-dragon': DESERT,
  'hermanns-tortoise': { ...DESERT, sizeCm: [150, 80, 40], openPercent: 50 },
  'green-iguana': { sizeCm: [180, 90, 180], openPercent: 6, planting: 'light', floor: 'damp-below' },
  'ball-python': SNAKE,
  'corn-snake': { ...SNAKE, floor: 'dry' },
};

/** Returns the enclosure of a species; a mesh one of a middle size where none is known. */
export function starterEnclosure(species: string): StarterEnclosure {
  return ENCLOSURES[species] ?? MESH;
}
