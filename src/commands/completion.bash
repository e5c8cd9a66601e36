# Completion of crumbnote for bash.
_crumbnote() {
  local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]}
  if [ "$COMP_CWORD" -eq 1 ]; then
    mapfile -t COMPREPLY < <(compgen -W 'start draft site check weigh macros swap trial cupboard formulate release --help' -- "$word")
    return
  fi
  case $before in
    --to) mapfile -t COMPREPLY < <(compgen -f -- "$word"); return ;;
    --out|--folder) mapfile -t COMPREPLY < <(compgen -d -- "$word"); return ;;
    --workers|--short-of|--keep|--number) return ;;
    --verdict) mapfile -t COMPREPLY < <(compgen -W 'works adjust different avoid' -- "$word"); return ;;
    --date|--liquid|--texture|--height|--spread|--weight|--remarks|--by|--file|--picture) return ;;
    --as-written-*) return ;;
    --as) mapfile -t COMPREPLY < <(compgen -W 'text json annotations sarif' -- "$word"); return ;;
    --stdin) mapfile -t COMPREPLY < <(compgen -f -X '!*.md' -- "$word"; compgen -d -- "$word"); return ;;
  esac
  if [[ $word == -* ]]; then
    local options='--json --help'
    [ "${COMP_WORDS[1]}" = draft ] && options="$options --to --number"
    [ "${COMP_WORDS[1]}" = site ] && options="$options --out --workers --views"
    [ "${COMP_WORDS[1]}" = check ] && options="$options --as --stdin"
    [ "${COMP_WORDS[1]}" = cupboard ] && options="$options --short-of --staples"
    [ "${COMP_WORDS[1]}" = formulate ] && options="$options --folder --recipe"
    [ "${COMP_WORDS[1]}" = release ] && options="$options --to --keep --back --gzip --brotli --workers"
    [ "${COMP_WORDS[1]}" = trial ] && options="$options --verdict --date --liquid --texture --height --spread --weight --as-written-height --as-written-spread --as-written-weight --picture --as-written-picture --remarks --by --file"
    mapfile -t COMPREPLY < <(compgen -W "$options" -- "$word")
    return
  fi
  case ${COMP_WORDS[1]} in
    cupboard) [ "$COMP_CWORD" -eq 2 ] && mapfile -t COMPREPLY < <(compgen -d -- "$word") ;;
    draft) [ "$COMP_CWORD" -eq 2 ] && mapfile -t COMPREPLY < <(compgen -f -- "$word") ;;
    start|site|check|release) mapfile -t COMPREPLY < <(compgen -d -- "$word") ;;
    formulate) mapfile -t COMPREPLY < <(compgen -f -X '!*.y*ml' -- "$word"; compgen -d -- "$word") ;;
    macros|swap|trial) [ "$COMP_CWORD" -eq 2 ] && mapfile -t COMPREPLY < <(compgen -f -X '!*.md' -- "$word"; compgen -d -- "$word") ;;
  esac
}
complete -o filenames -F _crumbnote crumbnote
