import type { Command } from 'commander'

export const SHELLS = ['bash', 'zsh', 'fish'] as const

/** A script that completes commands, options and files in the named shell, made from the command itself. */
export function completionScript(shell: string, program: Command): string {
  const commands = program.commands.map((c) => ({
    name: c.name(),
    description: c.description(),
    options: c.options.map((o) => o.long ?? o.short ?? '').concat('--help'),
  }))
  const names = commands.map((c) => c.name).join(' ')
  if (shell === 'fish')
    return [
      ...commands.map(
        (c) =>
          `complete -c lengthwise -n __fish_use_subcommand -a ${c.name} -d '${c.description.replaceAll("'", "\\'")}'`,
      ),
      ...commands.flatMap((c) =>
        c.options.map(
          (o) => `complete -c lengthwise -n '__fish_seen_subcommand_from ${c.name}' -l ${o.replace(/^-+/, '')}`,
        ),
      ),
      '',
    ].join('\n')
  const cases = commands.map((c) => `    ${c.name}) words="${c.options.join(' ')}" ;;`).join('\n')
  const bash = `_lengthwise() {
  local words
  case "\${COMP_WORDS[1]}" in
${cases}
  esac
  if [ "$COMP_CWORD" -eq 1 ]; then
    COMPREPLY=($(compgen -W "${names}" -- "\${COMP_WORDS[COMP_CWORD]}"))
  elif [[ "\${COMP_WORDS[COMP_CWORD]}" == -* ]]; then
    COMPREPLY=($(compgen -W "$words" -- "\${COMP_WORDS[COMP_CWORD]}"))
  else
    COMPREPLY=($(compgen -f -- "\${COMP_WORDS[COMP_CWORD]}"))
  fi
}
complete -o filenames -F _lengthwise lengthwise
`
  return shell === 'zsh' ? `autoload -U +X bashcompinit && bashcompinit\n${bash}` : bash
}
