/** What can hurt, in words that are printed where it matters; each with who says so. */

export interface CautionText {
  readonly id: string;
  readonly text: string;
  readonly source: string;
}

export const PRACTICE = 'common practice, no source';

/** In the order in which they are printed. Sources: excerpts of the pages and papers named were read, unless marked. */
export const CAUTIONS = [
  {
    id: 'verify-with-vet',
    text: 'These are starting points from sources of mixed quality; species, life stage and individual vary. A licensed veterinarian experienced with reptiles and amphibians decides. Emergency signs: open-mouth breathing, collapse, not eating, swollen limbs, sunken eyes.',
    source: PRACTICE,
  },
  {
    id: 'salmonella',
    text: 'Reptiles and amphibians can carry Salmonella while looking healthy. Wash hands with soap right after touching the animal, its food, water or enclosure; supervise children.',
    source: 'CDC leaflet, After you touch amphibians or reptiles, wash your hands',
  },
  {
    id: 'people-at-risk',
    text: 'Children under 5, people over 65, pregnant people and those with weak immunity should avoid contact.',
    source:
      'CDC leaflet; Swedish National Veterinary Agency, Salmonella in reptiles and amphibians; American Academy of Pediatrics, Table 1',
  },
  {
    id: 'out-of-kitchens',
    text: 'Keep animals and their equipment out of kitchens; clean tanks outside, or clean the tub thoroughly afterwards. Do not empty water with a siphon started by mouth.',
    source:
      'CDC leaflet; Swedish National Veterinary Agency, Salmonella in reptiles and amphibians; American Academy of Pediatrics, Table 1',
  },
  {
    id: 'mains-near-water',
    text: 'Mains near water: supply through a residual-current device (30 mA in IEC practice; a ground-fault interrupter in North America), a drip loop in every cable, connections above the water line and off the floor.',
    source: PRACTICE,
  },
  {
    id: 'unplug-first',
    text: 'Unplug before putting hands in water or servicing lamps and pumps. Local electrical codes and a qualified electrician outrank this sheet.',
    source: PRACTICE,
  },
  {
    id: 'timer-ratings',
    text: 'Check the ratings of timer and strip: lamps with ballasts and pumps are inductive loads; never exceed the plate rating; no strip plugged into a strip.',
    source: PRACTICE,
  },
  {
    id: 'heat-on-thermostat',
    text: 'Every heat source on a thermostat and guarded by mesh. A timer switches; it does not regulate heat.',
    source: 'RSPCA, Bearded dragon advice page',
  },
  {
    id: 'hot-lamps',
    text: 'Hot lamps burn animals and people and can shatter if sprayed: keep nozzles away, mist with basking lamps off or shielded. Nothing to climb may lead nearer to a hot lamp than the basking place.',
    source: PRACTICE,
  },
  {
    id: 'shield-the-lamp',
    text: 'Mists run here while a hot lamp is on: shield the lamp, keep the nozzle off it, and look again after every change.',
    source: PRACTICE,
  },
  {
    id: 'lamp-distance',
    text: 'The basking lamp stays at least 25 to 30 cm from the back of the animal.',
    source: 'RSPCA, Bearded dragon advice page',
  },
  {
    id: 'uv-lamps',
    text: 'UV lamps can injure eyes: do not stare at them, keep the distance that the maker states, always offer shade, and measure the UV index at the basking place.',
    source: 'UV Guide UK (2007) Special report on high-UVB fluorescent lamps (photo-kerato-conjunctivitis)',
  },
  {
    id: 'no-uv-through-glass',
    text: 'Glass and plastic block UVB: sun through a window does not count.',
    source: 'vet2pet.com.au (veterinary clinic), Reptile care',
  },
  {
    id: 'no-glass-in-sun',
    text: 'Never place a glass enclosure in direct sun: it overheats quickly.',
    source: PRACTICE,
  },
  {
    id: 'vitamins',
    text: 'Vitamin A and D3 can be overdosed. Do not stack two products that hold the same vitamin; do not inject; signs need a veterinarian. How much is a matter of the label and the veterinarian.',
    source: 'Ferguson GW et al. (1996) Zoo Biology 15:279-299; Mayer J, Huang J (2018) Hypervitaminosis A in reptiles',
  },
  {
    id: 'power-cut',
    text: 'Power cut: insulate; no flames or generators indoors. When power returns, reset every mechanical dial, which stood still meanwhile, and check lamps, pump and thermostats. Pump and drip stop too: a hand sprayer is the reserve.',
    source: PRACTICE,
  },
  {
    id: 'dial-clocks',
    text: 'A pin dial knows no clock changes and no season: verify it against a clock weekly.',
    source: PRACTICE,
  },
  {
    id: 'pump-can-flood',
    text: 'A misting pump on a quarter-hour pin can flood the enclosure: a seconds timer belongs between. Never run the pump dry; fit a drain or an overflow tray.',
    source: PRACTICE,
  },
  {
    id: 'repeat-timer-flicker',
    text: 'A repeat-cycle timer starts with ON whenever power comes, also after a flicker: look at the tray after a storm.',
    source: PRACTICE,
  },
  {
    id: 'standing-water',
    text: 'Warm stagnant water can grow bacteria, Legionella among them: change and scrub as scheduled.',
    source: PRACTICE,
  },
  {
    id: 'rest-only-if-checked',
    text: 'Never let an animal rest through the winter that is ill, underweight, recently fed or unchecked by a veterinarian.',
    source:
      'Veterinary sheet, Tortoise: preparing for hibernation; Lewis W (2022) Hibernating tortoises, Veterinary Nursing Journal',
  },
] as const satisfies readonly CautionText[];

export type CautionId = (typeof CAUTIONS)[number]['id'];
