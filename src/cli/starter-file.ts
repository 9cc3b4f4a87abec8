/** The commented household file that `dewdial new` writes: one animal, one dial, everything else as comments to uncomment. */

export interface StarterAnswers {
  readonly name: string;
  readonly species: string;
  readonly stage: string;
  readonly timezone: string;
  readonly latitude: number;
  readonly longitude: number;
  /** For instance `15 min`. */
  readonly step: string;
  readonly units: 'metric' | 'us';
  /** First day of the plan, YYYY-MM-DD. */
  readonly from: string;
  /** Whether the species is misted, by its profile. */
  readonly isMisted: boolean;
  /** Whether the species basks or needs UVB, by its profile. */
  readonly lampUses: readonly string[];
  /** Food streams of the stage, by its profile. */
  readonly foods: readonly string[];
}

/** Returns the text of the file. */
export function starterFile(a: StarterAnswers): string {
  return `${[head(a), site(a), plan(a), people(), hardware(a), enclosure(a), extras()].join('\n')}`;
}

function q(text: string): string {
  return JSON.stringify(text);
}

function head(a: StarterAnswers): string {
  return `# A household file for dewdial: what the animal needs and what hardware you own. Dewdial works out the times.
# Every measure carries its unit (15 min, 24 in, 78 °F). Check it with: dewdial check FILE
format: 1
name: ${q(a.name)}
units: ${a.units}                      # how results are shown: metric or us
paper: ${a.units === 'us' ? 'letter' : 'a4'}
# contacts: { keeper: "your number", vet: "your exotics vet and number" }      # printed on the sheet for a sitter
`;
}

function site(a: StarterAnswers): string {
  const room =
    a.units === 'us' ? 'day: 70 °F, night: 65 °F, humidity: 45 %' : 'day: 21 °C, night: 18 °C, humidity: 45 %';
  return `site:
  timezone: ${a.timezone}
  latitude: ${a.latitude}                   # degrees, north positive
  longitude: ${a.longitude}                  # degrees, east positive
  room: { ${room} }      # the room the enclosures stand in: measure it, then correct these
`;
}

function plan(a: StarterAnswers): string {
  return `plan:
  from: ${a.from}
  days: 365
  change_on: [sat, sun]               # the days on which you are willing to move pins
  settings_at_most: 8                 # how many times a year at most, the first included
`;
}

function people(): string {
  return `people:
  - { id: keeper, feeds_at: "08:30", chores_on: sat }
`;
}

function hardware(a: StarterAnswers): string {
  const pump = `  # A misting pump behind a seconds timer: uncomment, and set "mist: pump" below.
  # - { id: mist-timer, kind: programmable-timer, entries: 8, resolution: 1 s, shortest: 5 s, clock: wall }
  # - { id: pump, kind: mist-pump, outlet: mist-timer, power: 30 W, flow: 90 mL/min, nozzles: 1, longest_run: 5 min, rest: 10 min, tank: { holds: 10 L, reserve: 1 L } }
`;
  return `hardware:
  - id: dial
    kind: pin-dial                    # a mechanical timer whose day is set with push pins
    step: ${a.step}                      # the length of one pin, printed on the timer
    outlets: 1                        # how many sockets it switches together
    rating: ${a.units === 'us' ? '1725 W' : '1800 W'}                     # printed on its back
    pins: down-is-on                  # or up-is-on: try one pin and look
    clock: standard                   # the dial is left alone when the clocks change
${a.isMisted ? '  - { id: sprayer, kind: hand-sprayer, flow: 60 mL/min }\n' : ''}${pump}`;
}

function enclosure(a: StarterAnswers): string {
  const size =
    a.units === 'us' ? 'width: 24 in, depth: 18 in, height: 36 in' : 'width: 60 cm, depth: 45 cm, height: 90 cm';
  const uses = ['daylight', ...a.lampUses];
  return `enclosures:
  - id: home
    name: ${q(a.name)}
    species: ${a.species}             # the needs come from its profile: dewdial species ${a.species}
    stage: ${a.stage}
    animals: 1
    size: { ${size} }
    open: 30 %                        # bare mesh as a share of the walls and the top
    planting: ${a.isMisted ? 'medium' : 'light'}                  # none, light, medium or dense
    lamps:
      - { id: day, kind: led, for: [daylight], power: 20 W, outlet: dial }
${uses.includes('basking') ? '      # - { id: basking, kind: halogen, for: [basking], power: 50 W, outlet: dial, thermostat: dimming, guard: true }\n' : ''}${uses.includes('uvb') ? '      # - { id: uv, kind: fluorescent, for: [uvb], power: 24 W, outlet: dial, replace_after: 12 months }\n' : ''}    mist: ${a.isMisted ? 'by-hand' : 'none'}                     # by-hand, none, or the id of a pump
    nozzles: { hits_lamp: false }     # whether spray can reach a hot lamp
    feeders:
${feeders(a.foods)}`;
}

function feeders(foods: readonly string[]): string {
  const lines: Readonly<Record<string, string>> = {
    insects: '      - { id: cricket, food: insects, share: 100 %, dust: true, shelf_life: 10 days, gut_load: 24 h }',
    greens: '      - { id: greens, food: greens, share: 100 %, shelf_life: 4 days }',
    prepared: '      - { id: diet, food: prepared, share: 100 % }',
    rodents: '      - { id: rodent, food: rodents, share: 100 % }',
  };
  return `${foods.map((food) => lines[food] ?? '').join('\n')}\n`;
}

function extras(): string {
  return `    # targets:                        # anything of the profile can be set here, with why
    #   humidity: { day: [45 %, 60 %], why: "the vet's advice" }
    # chores:
    #   - { id: wipe-glass, title: Wipe the glass, every: 1 week, minutes: 5 }
# away:                               # a sitter's visits
#   - { from: 2027-03-05, to: 2027-03-14, sitter: sitter, visits: every 1 day }
`;
}
