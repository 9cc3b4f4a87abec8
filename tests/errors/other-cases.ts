/** Codes whose input is too large to keep as a file, or is more than one file. */
import { LARGEST_FILE_BYTES } from '../../src/read/source-text.ts';
import { pumpHousehold } from '../generated/pump-household.ts';
import { calendarCases } from './calendar-cases.ts';
import { type Said, saidOfText } from './gallery.ts';
import { paperCases } from './paper-cases.ts';

export interface OtherCase {
  readonly said: () => Said;
  /** The exact text of the messages of the code. */
  readonly expected: string;
}

const HOME = 'format: 1\nname: One gecko\n';

/** One dial, one lamp; `plan` and the enclosure's own targets as given. */
function oneDial(today: string, plan: string, targets = '', dials = DIAL, lamps = LAMP): string {
  return `# today: ${today}
format: 1
name: One shelf
site: { timezone: Europe/Madrid, latitude: 41.65, longitude: -0.89, room: { day: 22 °C, night: 20 °C, humidity: 45 % } }
plan: { ${plan} }
people: [{ id: keeper, feeds_at: "12:30" }]
hardware:
${dials}enclosures:
  - id: fern
    species: veiled-chameleon
    stage: adult
    size: { width: 60 cm, depth: 60 cm, height: 120 cm }
    open: 45 %
    mist: none
    lamps:
${lamps}${targets === '' ? '' : `    targets: ${targets}\n`}`;
}

const DIAL = '  - { id: dial, kind: pin-dial, step: 15 min, rating: 1800 W }\n';
const LAMP = '      - { id: day, kind: led, for: [daylight], power: 20 W, warms: 3 °C, outlet: dial }\n';
const LATE_EVENING = '{ day: { no_light_before: "08:30", no_light_after: "18:00", why: the house sleeps } }';

/** More lamps with needs of their own than can be tried on so many timers. */
function manyDials(): string {
  return Array.from(
    { length: 14 },
    (_, index) =>
      `  - { id: dial-${index}, kind: pin-dial, step: ${index % 2 === 0 ? 15 : 30} min, rating: ${100 + index} W }\n`,
  ).join('');
}

function manyLamps(): string {
  const uses = ['daylight', 'basking', 'uvb', 'plants'];
  return Array.from(
    { length: 24 },
    (_, index) =>
      `      - { id: lamp-${index}, kind: led, for: [${uses[index % 4]}], power: ${20 + index} W, warms: 0 °C, outlet: auto }\n`,
  ).join('');
}

export const otherCases: Readonly<Record<string, OtherCase>> = {
  ...calendarCases,
  ...paperCases,
  'file-too-large': {
    said: () => saidOfText('home.yaml', HOME + '# a very long comment\n'.repeat(LARGEST_FILE_BYTES / 20)),
    expected: `home.yaml:1:1  cannot be read (file-too-large)
  > format: 1
    ~
  because  the file has 282 KiB; at most 256 KiB are read
  instead  split it into several households
`,
  },
  'too-deep': {
    said: () => saidOfText('home.yaml', `${HOME}site: ${'['.repeat(30)}1${']'.repeat(30)}\n`),
    expected: `home.yaml:3:31  cannot be read (too-deep)
  > site: [[[[[[[[[[[[[[[[[[[[[[[[[[[[[[1]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]
                                  ~~~~~~~~~~~~~
  because  entries stand more than 24 levels deep
  instead  nothing that is read here lies so deep; take levels out
`,
  },
  'text-too-long': {
    said: () => saidOfText('home.yaml', `format: 1\nname: One gecko\nid: ${'a'.repeat(70)}\n`),
    expected: `home.yaml:3:5  cannot be read (text-too-long)
  > id: ${'a'.repeat(70)}
        ${'~'.repeat(70)}
  because  the text has 70 characters; 64 fit
  instead  write it shorter
`,
  },
  'clock-set-back': {
    said: () =>
      saidOfText(
        'home.yaml',
        oneDial('2027-02-01', 'from: 2027-01-01, days: 60'),
        oneDial('2027-02-20', 'from: 2027-01-01, days: 60'),
      ),
    expected: `note (clock-set-back)
  because  today is given as 2027-02-01, and the plan that stands was made on 2027-02-20; from 2027-02-01 on it is planned anew
  instead  leave out --today, or name a day from 2027-02-20 on
`,
  },
  'first-change-held-back': {
    said: () =>
      saidOfText(
        'home.yaml',
        oneDial('2028-01-01', 'from: 2028-01-01, days: 120, at_least_between: 90 days'),
        oneDial('2027-09-03', 'from: 2027-09-03, days: 120'),
      ),
    expected: `home.yaml:5:56  note (first-change-held-back)
  > plan: { from: 2028-01-01, days: 120, at_least_between: 90 days }
                                                           ~~~~~~~
  because  dial was changed less than 90 days before the plan begins, so it is left alone until 2028-03-31
  instead  shorten at_least_between to change it sooner
`,
  },
  'settings-above-most': {
    said: () =>
      saidOfText(
        'home.yaml',
        oneDial('2027-03-01', 'from: 2027-01-01, days: 120, settings_at_most: 1', LATE_EVENING),
        oneDial('2027-01-01', 'from: 2027-01-01, days: 120, settings_at_most: 1'),
      ),
    expected: `home.yaml:5:56  falls short (settings-above-most)
  > plan: { from: 2027-01-01, days: 120, settings_at_most: 1 }
                                                           ~
  because  dial has used up its 1 setting and what stands on it is no longer allowed, so it gets 2
  instead  allow more settings in the plan
`,
  },
  'pumps-not-proven': {
    said: () =>
      saidOfText(
        'home.yaml',
        pumpHousehold(
          [3, 3, 3],
          [1, 2, 3, 4, 5, 6, 7, 8, 1].map((perDay) => ({ perDay })),
        ),
      ),
    expected: `note (pumps-not-proven)
  because  auto shares 9 enclosures out to 3 pumps, and exceeds 1 limit with one of them; a sharing with less may be left, but with 0 at least
  instead  name the pump of a few enclosures to make the search small
`,
  },
  'assignment-not-proven': {
    said: () =>
      saidOfText('home.yaml', oneDial('2027-01-01', 'from: 2027-01-01, days: 60', '', manyDials(), manyLamps())),
    expected: `note (assignment-not-proven)
  because  auto places 14 lamps on 14 timers with a worst error of 15 min; a better arrangement may be left, by 7.6 min at most: none is under 7.4 min
  instead  name the outlet of a few lamps to make the search small
`,
  },
};
