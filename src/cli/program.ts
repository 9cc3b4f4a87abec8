/** The command line: every command with its options, each loaded when it is asked for. */
import { Command, CommanderError, Option } from 'commander';
import type { CompletedCommand } from './completion-command.ts';
import { afterUsageError, ENDS, examplesText } from './help-texts.ts';
import type { CommonOptions } from './usage.ts';
import { EXIT, type World } from './world.ts';

type Run<O> = (args: readonly string[], options: O & CommonOptions, world: World, version: string) => Promise<number>;

/** Runs one command line and returns its exit code. Each command's code is loaded when it is asked for. */
export async function program(argv: readonly string[], world: World, version: string): Promise<number> {
  let exitCode: number = EXIT.done;
  const root = new Command('dewdial')
    .exitOverride()
    .configureOutput({
      writeOut: world.out,
      writeErr: world.say,
      outputError: (text, write) => write(usageWords(text)),
    })
    .description(
      'Turns the needs of light- and water-sensitive animals into timer pins, mist entries, calendars and a page for the door.',
    )
    .version(version, '--version', 'print the version')
    .helpOption('-h, --help', 'print help')
    .showSuggestionAfterError()
    .showHelpAfterError('  dewdial --help lists the commands')
    .addHelpText('before', examplesText(null))
    .addHelpText('after', ENDS);

  const command = <O>(spec: string, summary: string, load: () => Promise<{ readonly run: Run<O> }>): Command =>
    root
      .command(spec)
      .description(summary)
      .action(async (...parts: unknown[]) => {
        const self = parts.at(-1) as Command;
        const { run } = await load();
        exitCode = await run(self.args, self.opts() as O & CommonOptions, world, version);
      });

  command('new <file>', 'write a commented starter file', () => import('./new-command.ts'))
    .option('--species <name>', 'the animal: an id or a name of "dewdial species"')
    .option('--coordinates <pair>', 'of your town: latitude, longitude, for instance "41.65, -0.89"')
    .option('--latitude <degrees>', 'north positive, instead of --coordinates')
    .option('--longitude <degrees>', 'east positive, instead of --coordinates')
    .option('--timezone <zone>', "for instance Europe/Madrid; this machine's where nothing is said and it fits")
    .option('--step <span>', 'the length of one pin, for instance 15 min')
    .option('--units <system>', 'metric or us')
    .addOption(new Option('--mist <who>', 'who mists it, where it is misted').choices(['by-hand', 'pump']))
    .option('--name <text>', 'what to call it');
  command(
    'species [name]',
    'the species, their targets and where each number comes from',
    () => import('./species-command.ts'),
  );
  command('check <file>', 'read, solve and report; write nothing', () => import('./check-command.ts')).option(
    '--out <folder>',
    'where an earlier plan stands',
    'out',
  );
  command(
    'compile <files...>',
    'write the plan, the settings and all that is drawn from them; several files, or folders of them, at once',
    () => import('./compile-command.ts'),
  )
    .option('--out <folder>', 'where the results go', 'out')
    .option('--no-pdf', 'leave the PDF files out')
    .option('--weeks <n>', 'weeks on the page for the door, 1 to 5; 4 where nothing is said and they fit')
    .option('--month <month>', 'a month on the page for the door (YYYY-MM)')
    .option('--large-print', 'the page for the door in large print, on as many pages as it takes')
    .addOption(new Option('--per <what>', 'a page for the door each').choices(['enclosure']))
    .option('--font <files...>', 'fonts for letters that the program has none for')
    .addOption(new Option('--language <code>', 'write everything in this language').choices(['en', 'es']))
    .option('--part <which>', 'of many files this part alone, for instance 2/8')
    .option('--jobs <n>', 'households compiled at once; as many as there are cores')
    .addOption(new Option('--show <stage>', 'print a stage instead of writing').choices(['household', 'care', 'plan']));
  command('today <file>', 'what the machines do and what a person does', () => import('./today-command.ts'))
    .option('--on <date>', 'another day (YYYY-MM-DD)')
    .option('--days <n>', 'so many days', '1')
    .option('--for <person>', 'only what this person does')
    .option('--out <folder>', 'where an earlier plan stands', 'out');
  command(
    'changes <file>',
    'what to change on the shelf since the plan that stands',
    () => import('./changes-command.ts'),
  )
    .option('--out <folder>', 'where the earlier plan stands', 'out')
    .option('--since <date>', 'against the revision made by then (YYYY-MM-DD)');
  command(
    'handover <file>',
    'the sheet and the calendar for a sitter, for given dates',
    () => import('./handover-command.ts'),
  )
    .requiredOption('--from <date>', 'the first day away (YYYY-MM-DD)')
    .requiredOption('--to <date>', 'the last day away (YYYY-MM-DD)')
    .option('--out <folder>', 'where the results go', 'out')
    .option('--large-print', 'in large print')
    .option('--font <files...>', 'fonts for letters that the program has none for')
    .addOption(new Option('--language <code>', 'of the sitter').choices(['en', 'es']));
  command(
    'fit <file> [readings]',
    "fit an enclosure's air to the log of a gauge; every command uses what is found",
    () => import('./fit-command.ts'),
  )
    .option('--enclosure <id>', 'where the gauge stands, if there are several')
    .option(
      '--salt <points>',
      'a salt test of the gauge: the salt or its humidity, and what the gauge said (NaCl=72,MgCl2=35)',
    )
    .option('--salt-at <temperature>', 'the temperature of that test', '22 °C')
    .addOption(new Option('--dates <order>', 'of day, month and year in the log').choices(['dmy', 'mdy', 'ymd']))
    .option('--columns <list>', 'what the columns hold, for instance time,humidity,temperature,mist,-')
    .addOption(new Option('--clock <which>', "the gauge's clock").choices(['wall', 'standard', 'utc']).default('wall'))
    .option('--shift <minutes>', 'added to every time of the log, for instance --shift=-60')
    .option('--dry', 'report and write nothing')
    .option('--picture <file>', 'where the picture (SVG) goes; out/HOUSEHOLD/fit/ENCLOSURE.svg where nothing is said')
    .option('--remove <id>', 'take the fitted values of an enclosure away, or all')
    .option('--out <folder>', 'where the results stand', 'out');
  command(
    'why <file> [what]',
    'why a setting is as it is, what another would buy, where a number comes from',
    () => import('./why-command.ts'),
  ).option('--out <folder>', 'where an earlier plan stands', 'out');
  command('serve <file>', 'the calendars and a page for the phones at home', () => import('./serve-command.ts'))
    .option('--out <folder>', 'where the results go', 'out')
    .option('--host <address>', 'an address of this machine, or all, for phones on the same network')
    .option('--port <number>', 'where to listen', '8710')
    .option('--new-token', 'make a new secret address; phones subscribe again');
  command(
    'schema <which>',
    'print the JSON Schema of a household or a profile, for an editor',
    () => import('./schema-command.ts'),
  );
  command('completion <shell>', 'print the completion script for bash, zsh or fish', async () => {
    const { run } = await import('./completion-command.ts');
    return { run: async ([shell = '']) => run(shell, root.commands.map(completed), world) };
  });
  for (const each of root.commands) withCommonOptions(each);

  try {
    await root.parseAsync(argv, { from: 'user' });
    return exitCode;
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    return error.exitCode === 0 ? EXIT.done : EXIT.usage;
  }
}

/** The words of the option package in ours. */
function usageWords(text: string): string {
  return text
    .replace(/^error: /, 'dewdial: ')
    .replace(
      /missing required argument '(\w+)'/,
      (_, name: string) => `${name.replace(/s$/, '').toUpperCase()} is missing`,
    )
    .replace(/required option '(--\w+) <\w+>' not specified/, '$1 is missing');
}

/** Behind the options of its own, those that every command takes; before all of them examples. */
function withCommonOptions(command: Command): void {
  const name = command.name();
  command
    .option('--json', 'print the result as JSON')
    .option('--strict', 'end with 3 where there are warnings')
    .option('--today <date>', 'take this date as today (YYYY-MM-DD)')
    .option('--debug', 'print details of a fault')
    .helpOption('-h, --help', 'print help')
    .addHelpText('before', examplesText(name))
    .showHelpAfterError(afterUsageError(name));
}

/** What may stand behind a command that takes no file. */
const WORDS: Readonly<Record<string, readonly string[]>> = {
  completion: ['bash', 'zsh', 'fish'],
  schema: ['household', 'profile'],
};

function completed(command: Command): CompletedCommand {
  const options = [...command.options, new Option('-h, --help', 'print help')];
  return {
    name: command.name(),
    says: command.description(),
    words: WORDS[command.name()] ?? [],
    options: options.map(({ short, long, description, argChoices, required, optional }) => ({
      flags: [long, short].filter((flag) => typeof flag === 'string'),
      says: description,
      takesValue: required || optional,
      choices: argChoices ?? [],
    })),
  };
}
