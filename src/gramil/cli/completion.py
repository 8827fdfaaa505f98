"""`gramil completion`: the few lines by which a shell completes gramil's words under TAB."""

import click

from gramil.cli.complete import ASK

_BASH = r"""
_gramil() {
  local line=${COMP_LINE:0:COMP_POINT} now=${COMP_WORDS[COMP_CWORD]} word told cut=0
  local -a words
  read -ra words <<<"$line"
  [[ $line == *[[:space:]] ]] && words+=("")
  local begun=${words[-1]}
  [[ $now == "=" ]] && now=""
  [[ $begun == *[=:]* ]] && cut=$((${#begun} - ${#now}))
  COMPREPLY=()
  while IFS=$'\t' read -r word told; do
    [[ -n $word ]] && COMPREPLY+=("${word:cut}")
  done < <(command gramil ASK "${words[@]:1}" 2>/dev/null)
  [[ ${#COMPREPLY[@]} -eq 1 && ${COMPREPLY[0]} == *= ]] && compopt -o nospace
  return 0
}
complete -o default -o bashdefault -F _gramil gramil
"""
_ZSH = r"""
(( $+functions[compdef] )) || { autoload -Uz compinit && compinit -u; }
_gramil() {
  local -a found closing line
  line=("${(@Q)words[2,CURRENT]}")
  local each
  for each in "${(@f)$(command gramil ASK "${line[@]}" 2>/dev/null)}"; do
    [[ -z $each ]] && continue
    local word=${each%%$'\t'*} told=${each#*$'\t'}
    if [[ $word == *= ]]; then closing+=("$word"); else found+=("${word//:/\\:}:$told"); fi
  done
  if (( ! $#found && ! $#closing )); then _files; return; fi
  (( $#closing )) && compadd -S '' -a closing
  (( $#found )) && _describe gramil found
}
compdef _gramil gramil
"""
_FISH = r"""
function __gramil_next
  set -l words (commandline -opc) (commandline -ct)
  set -l found (command gramil ASK $words[2..-1] 2>/dev/null)
  if test (count $found) -eq 0
    __fish_complete_path (commandline -ct)
  else
    string join \n -- $found
  end
end
complete -c gramil -f -a '(__gramil_next)'
"""
_POWERSHELL = r"""
Register-ArgumentCompleter -Native -CommandName gramil -ScriptBlock {
  param($begun, $line, $at)
  $words = @($line.CommandElements | Select-Object -Skip 1 | Where-Object { $_.Extent.EndOffset -le $at } |
    ForEach-Object { $_.Extent.Text.Trim('"', "'") })
  if ($begun -eq '') { $words += '""' }
  gramil ASK @words 2>$null | Where-Object { $_ } | ForEach-Object {
    $word, $told = $_ -split "`t", 2
    if (-not $told) { $told = $word }
    [System.Management.Automation.CompletionResult]::new($word, $word, 'ParameterValue', $told)
  }
}
"""
SHELLS = {"bash": _BASH, "zsh": _ZSH, "fish": _FISH, "powershell": _POWERSHELL}


@click.command()
@click.argument("shell", type=click.Choice(tuple(SHELLS)))
def command(shell: str) -> None:
    """The lines by which SHELL completes commands, options, parts, operations, keys and addresses of figures.

    One line in the shell's own file switches it on:

    \b
    bash        eval "$(gramil completion bash)"                              in .bashrc
    zsh         eval "$(gramil completion zsh)"                               in .zshrc
    fish        gramil completion fish | source                               in config.fish
    PowerShell  gramil completion powershell | Out-String | Invoke-Expression  in $PROFILE
    """
    click.echo(SHELLS[shell].strip().replace("ASK", ASK))
