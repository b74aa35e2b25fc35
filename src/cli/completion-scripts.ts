import type { Command } from 'commander';

/** What a shell completes of one command. */
export interface CompletedCommand {
  name: string;
  /** Long flags. */
  flags: string[];
  /** Words that may follow a flag, for flags that take one of a few. */
  words: { flag: string; choices: readonly string[] }[];
  /** Words that the arguments are chosen from; empty where they are folders. */
  choices: readonly string[];
}

/** Everything there is to complete, from the commands themselves. */
export function completedCommands(program: Command): CompletedCommand[] {
  return program.commands.map((command) => ({
    name: command.name(),
    flags: [...command.options.flatMap(({ long }) => long ?? []), '--help'],
    words: command.options.flatMap(({ long, argChoices }) =>
      long == null || argChoices === undefined ? [] : [{ flag: long, choices: argChoices }],
    ),
    choices: command.registeredArguments.flatMap(({ argChoices }) => argChoices ?? []),
  }));
}

/** The scripts by shell. */
export const shells = { bash: bashScript, zsh: zshScript };

const topFlags = ['--help', '--version'];

function bashScript(commands: readonly CompletedCommand[]): string {
  return `# Completion of holdwright in bash. To have it in every shell:
#   holdwright completion bash >> ~/.bashrc
_holdwright() {
  local word="\${COMP_WORDS[COMP_CWORD]}" before="\${COMP_WORDS[COMP_CWORD-1]}" command="\${COMP_WORDS[1]}"
  local words='' line
  COMPREPLY=()
  if [ "$COMP_CWORD" -eq 1 ]; then
    words='${[...commands.map(({ name }) => name), ...topFlags].join(' ')}'
  else
    case "$command $before" in
${choiceCases(commands, (choices) => `words='${choices.join(' ')}'`)}
      *)
        case "$command $word" in
${flagCases(commands, (words) => `words='${words.join(' ')}'`)}
        esac ;;
    esac
  fi
  if [ -n "$words" ]; then
    COMPREPLY=($(compgen -W "$words" -- "$word"))
  else
    while IFS= read -r line; do COMPREPLY+=("$line"); done < <(compgen -d -- "$word")
  fi
}
complete -o filenames -F _holdwright holdwright
`;
}

function zshScript(commands: readonly CompletedCommand[]): string {
  return `#compdef holdwright
# Completion of holdwright in zsh. To have it in every shell:
#   holdwright completion zsh > ~/.zfunc/_holdwright   (with ~/.zfunc in fpath, before compinit)
_holdwright() {
  local -a words_
  if (( CURRENT == 2 )); then
    words_=(${[...commands.map(({ name }) => name), ...topFlags].join(' ')})
  else
    case "$words[2] $words[CURRENT-1]" in
${choiceCases(commands, (choices) => `words_=(${choices.join(' ')})`)}
      *)
        case "$words[2] $words[CURRENT]" in
${flagCases(commands, (words) => `words_=(${words.join(' ')})`)}
        esac ;;
    esac
  fi
  if (( $#words_ )); then
    compadd -- $words_
  else
    _files -/
  fi
}
if [ "$funcstack[1]" = _holdwright ]; then
  _holdwright "$@"
else
  compdef _holdwright holdwright
fi
`;
}

/** One line for each flag that is followed by one of a few words. */
function choiceCases(
  commands: readonly CompletedCommand[],
  put: (choices: readonly string[]) => string,
): string {
  return commands
    .flatMap(({ name, words }) =>
      words.map(({ flag, choices }) => `      '${name} ${flag}') ${put(choices)} ;;`),
    )
    .join('\n');
}

/** One line for the flags of each command, and one for each command whose arguments are chosen from a few words. */
function flagCases(commands: readonly CompletedCommand[], put: (words: readonly string[]) => string): string {
  return commands
    .flatMap(({ name, flags, choices }) => [
      `          '${name} '-*) ${put(flags)} ;;`,
      ...(choices.length === 0 ? [] : [`          '${name} '*) ${put(choices)} ;;`]),
    ])
    .join('\n');
}
