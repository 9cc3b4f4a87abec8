/** Scripts that complete the command line in bash, zsh and fish, made from the commands themselves; nothing of ours runs while one types. */
import { UsageError } from './usage.ts';
import { EXIT, type World } from './world.ts';

export interface CompletedOption {
  /** `--out`; and the short one, where there is one. */
  readonly flags: readonly string[];
  readonly says: string;
  /** Whether a value follows. */
  readonly takesValue: boolean;
  /** All values that there are; empty where any may follow. */
  readonly choices: readonly string[];
}

export interface CompletedCommand {
  readonly name: string;
  readonly says: string;
  readonly options: readonly CompletedOption[];
  /** What may be said besides options: names, or files where there are none. */
  readonly words: readonly string[];
}

const WRITERS: Readonly<Record<string, (commands: readonly CompletedCommand[]) => string>> = {
  bash: bashScript,
  zsh: zshScript,
  fish: fishScript,
};

/** Prints the completions of a shell. Returns the exit code. */
export function run(shell: string, commands: readonly CompletedCommand[], world: World): number {
  const write = Object.hasOwn(WRITERS, shell) ? WRITERS[shell] : undefined;
  if (!write) throw new UsageError(`there is no completion for "${shell}": say bash, zsh or fish`);
  world.out(write(commands));
  return EXIT.done;
}

function flagsOf({ options }: CompletedCommand): string {
  return options.flatMap(({ flags }) => flags).join(' ');
}

function bashScript(commands: readonly CompletedCommand[]): string {
  const cases = commands.map((command) => {
    const values = command.options
      .filter(({ choices }) => choices.length > 0)
      .map(({ flags, choices }) => `        ${flags.join('|')}) words="${choices.join(' ')}" ;;`);
    return [
      `    ${command.name})`,
      `      case "$before" in`,
      ...values,
      `        *) if [[ "$here" == -* ]]; then words="${flagsOf(command)}"; else words="${command.words.join(' ')}"; fi ;;`,
      `      esac ;;`,
    ].join('\n');
  });
  return `# Completion of dewdial for bash: source <(dewdial completion bash)
_dewdial() {
  local here="\${COMP_WORDS[COMP_CWORD]}" before="\${COMP_WORDS[COMP_CWORD-1]}" words=""
  COMPREPLY=()
  if [[ $COMP_CWORD -eq 1 ]]; then
    COMPREPLY=($(compgen -W "${commands.map(({ name }) => name).join(' ')} --help --version" -- "$here" || :))
    return
  fi
  case "\${COMP_WORDS[1]}" in
${cases.join('\n')}
  esac
  if [[ -n "$words" ]]; then COMPREPLY=($(compgen -W "$words" -- "$here" || :)); fi
}
complete -o default -F _dewdial dewdial
`;
}

/** A text between single quotes of a shell; brackets and colons mean something to zsh. */
function zshText(text: string): string {
  return text.replace(/'/g, `'\\''`).replace(/[[\]:]/g, '\\$&');
}

function zshScript(commands: readonly CompletedCommand[]): string {
  const names = commands.map(({ name, says }) => `    '${name}:${zshText(says)}'`);
  const cases = commands.map(({ name, options, words }) => {
    const lines = options.flatMap(({ flags, says, takesValue, choices }) =>
      flags.map((flag) => {
        const values = choices.length > 0 ? `(${choices.join(' ')})` : '_files';
        return `        '${flag}[${zshText(says)}]${takesValue ? `:value:${values}` : ''}'`;
      }),
    );
    const rest = words.length > 0 ? `(${words.join(' ')})` : '_files';
    return `    ${name})\n      _arguments \\\n${[...lines, `        '*:what:${rest}'`].join(' \\\n')} ;;`;
  });
  return `#compdef dewdial
# Completion of dewdial for zsh: source <(dewdial completion zsh), after compinit
_dewdial() {
  local -a commands=(
${names.join('\n')}
  )
  if (( CURRENT == 2 )); then
    _describe 'command' commands
    return
  fi
  local command="$words[2]"
  shift words
  (( CURRENT-- ))
  case "$command" in
${cases.join('\n')}
  esac
}
compdef _dewdial dewdial
`;
}

function fishText(text: string): string {
  return `'${text.replace(/[\\']/g, '\\$&')}'`;
}

function fishScript(commands: readonly CompletedCommand[]): string {
  const first = commands.map(
    ({ name, says }) => `complete -c dewdial -f -n __fish_use_subcommand -a ${name} -d ${fishText(says)}`,
  );
  const rest = commands.flatMap(({ name, options, words }) => {
    const when = `-n '__fish_seen_subcommand_from ${name}'`;
    const named = words.length > 0 ? [`complete -c dewdial ${when} -f -a ${fishText(words.join(' '))}`] : [];
    const flagged = options.map(({ flags, says, takesValue, choices }) => {
      const spelled = flags.map((flag) => (flag.startsWith('--') ? `-l ${flag.slice(2)}` : `-s ${flag.slice(1)}`));
      const value = choices.length > 0 ? ` -x -a ${fishText(choices.join(' '))}` : takesValue ? ' -r' : '';
      return `complete -c dewdial ${when} ${spelled.join(' ')}${value} -d ${fishText(says)}`;
    });
    return [...named, ...flagged];
  });
  return `# Completion of dewdial for fish: dewdial completion fish | source\n${[...first, ...rest].join('\n')}\n`;
}
