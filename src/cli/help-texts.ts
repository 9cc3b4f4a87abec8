/** What `--help` shows around the options: examples first, of the whole program and of each command. */

type Example = readonly [line: string, says: string];

const OF_ALL: readonly Example[] = [
  ['dewdial new home.yaml', 'a starter file, with a comment on every line'],
  ['dewdial compile home.yaml', 'plan and settings into out/home/'],
  ['dewdial today home.yaml', 'what happens today, machine by machine'],
  ['dewdial handover home.yaml --from 2027-03-05 --to 2027-03-14', 'a sheet for the sitter'],
  ['dewdial fit home.yaml gauge.csv', 'the air as a gauge found it, used from then on'],
  ['dewdial serve home.yaml --host all', 'calendars and a page for the phones at home'],
  ['dewdial species panther-chameleon', 'targets beside their sources'],
];

const OF_COMMANDS: Readonly<Record<string, readonly Example[]>> = {
  new: [
    ['dewdial new home.yaml', 'asks six questions at a terminal'],
    [
      'dewdial new home.yaml --species leopard-gecko --coordinates "41.65, -0.89" --timezone Europe/Madrid',
      'asks none',
    ],
    ['dewdial new frogs.yaml --species red-eyed-tree-frog --mist pump --units us', 'asks for the rest'],
  ],
  species: [
    ['dewdial species', 'the list'],
    ['dewdial species leopard-gecko', 'what one needs, and who says so'],
    ['dewdial species ./my-gecko.yaml', 'a profile of your own'],
  ],
  check: [
    ['dewdial check home.yaml', 'every mistake at once, with what to write instead'],
    ['dewdial check home.yaml --strict', 'ends with 3 where there are warnings'],
  ],
  compile: [
    ['dewdial compile home.yaml', 'writes out/home/: settings.txt, index.html, calendars, pages'],
    ['dewdial compile home.yaml --weeks 2 --large-print', 'two weeks on the page for the door, in large letters'],
    ['dewdial compile rooms/ --no-pdf', 'all households of a folder, without paper'],
    ['dewdial compile rooms/ --part 2/8', 'the second eighth of them'],
  ],
  today: [
    ['dewdial today home.yaml', 'what the machines do and what you do'],
    ['dewdial today home.yaml --days 7', 'the week'],
    ['dewdial today home.yaml --on 2027-03-05 --for sitter', 'one day of one person'],
  ],
  changes: [
    ['dewdial changes home.yaml', 'what the edited file would have you change'],
    ['dewdial changes home.yaml --since 2027-03-01', 'against what stood on that day'],
  ],
  handover: [
    ['dewdial handover home.yaml --from 2027-03-05 --to 2027-03-14', 'a PDF and a calendar of these days'],
    ['dewdial handover home.yaml --from 2027-03-05 --to 2027-03-14 --language es --large-print', 'for another reader'],
  ],
  fit: [
    ['dewdial fit home.yaml gauge.csv --dry', 'looks, and writes nothing'],
    ['dewdial fit home.yaml gauge.csv --enclosure fern', 'where there are several enclosures'],
    ['dewdial fit home.yaml gauge.csv --salt NaCl=72,MgCl2=35', 'with the salt test of the gauge'],
    ['dewdial fit home.yaml --remove fern', 'back to the estimates'],
  ],
  why: [
    ['dewdial why home.yaml', 'what may be asked about'],
    ['dewdial why home.yaml dial', 'what binds its settings, and what others would buy'],
    ['dewdial why home.yaml fern/humidity', 'who says the numbers'],
  ],
  serve: [
    ['dewdial serve home.yaml', 'for this machine alone'],
    ['dewdial serve home.yaml --host all', 'for phones on the same network, with a code to scan'],
    ['dewdial serve home.yaml --host all --new-token', 'under a new secret address'],
  ],
  schema: [['dewdial schema household > household.json', 'for an editor that completes and checks YAML']],
  completion: [
    ['source <(dewdial completion bash)', 'in ~/.bashrc'],
    ['source <(dewdial completion zsh)', 'in ~/.zshrc, after compinit'],
    ['dewdial completion fish | source', 'in ~/.config/fish/config.fish'],
  ],
};

/** Where the explanation begins; a longer example has it on a line of its own. */
const COLUMN = 46;

/** Returns the examples that stand before the help of a command, of the whole program where none is named. */
export function examplesText(command: string | null): string {
  const examples = (command === null ? OF_ALL : OF_COMMANDS[command]) ?? [];
  const lines = examples.map(([line, says]) => {
    const start = `  ${line}`;
    return start.length < COLUMN - 1 ? `${start.padEnd(COLUMN)}${says}\n` : `${start}\n${' '.repeat(COLUMN)}${says}\n`;
  });
  return `Examples:\n${lines.join('')}`;
}

/** Returns what is said behind wrong usage of a command. */
export function afterUsageError(command: string): string {
  const [line] = OF_COMMANDS[command]?.[0] ?? [`dewdial ${command}`];
  return `  for instance  ${line}\n  more          dewdial ${command} --help`;
}

export const ENDS = `
Ends with:
  0  done, perhaps with warnings        1  the file cannot be used, or a part was refused for safety
  2  wrong usage                        3  done with warnings, under --strict
  73 cannot write                       70 a fault of this program
`;
