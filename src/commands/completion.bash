# Completion of crumbnote for bash. What there is to complete is asked of the program itself, whose
# help names the commands, their options and what these take: nothing here to be kept in step.

# Prints what may stand for the kind $1 (as the usage has it) and begins with $2; $3 is the help.
_crumbnote_values() {
  case $1 in
    DIR | FOLDER) compgen -d -- "$2" ;;
    FILE | PLACE) compgen -f -- "$2" ;;
    RECIPE) compgen -f -X '!*.md' -- "$2"; compgen -d -- "$2" ;;
    *) # "works, adjust, different or avoid": the words to choose from
      [[ $3 =~ ^[a-z]+(, [a-z]+)*' or '[a-z]+$ ]] && compgen -W "$(sed 's/,//g; s/ or / /' <<<"$3")" -- "$2" ;;
  esac
}

# Reads a command's help; prints the kinds of its plain arguments, one a line.
_crumbnote_arguments() {
  awk 'NR == 1 { for (i = 4; i <= NF; i++) {
    if ($i ~ /^\[?--/) { if ($i !~ /\]$/) i++; continue }
    gsub(/[^A-Z]/, "", $i); print $i } }'
}

# Reads a command's help; prints "--option VALUE" and the option's help, a tab between.
_crumbnote_options() {
  LC_ALL=C awk '/^Options:/ { on = 1 } on && /^  --/ { left = substr($0, 3, 39); sub(/ +$/, "", left)
    print left "\t" substr($0, 43) }'
}

_crumbnote() {
  local program=$1 word=$2 before=$3 command=${COMP_WORDS[1]} help option rest i plain=0
  COMPREPLY=()
  if ((COMP_CWORD == 1)); then
    mapfile -t COMPREPLY < <(compgen -W "$("$program" --help 2>/dev/null | awk '/^  [a-z]/ { print $1 }') --help" -- "$word")
    return
  fi
  help=$("$program" "$command" --help 2>/dev/null) || return
  [[ $word == = ]] && word=
  [[ $before == = ]] && before=${COMP_WORDS[COMP_CWORD-2]}
  local -A takes=() told=()
  while IFS=$'\t' read -r option rest; do
    takes[${option%% *}]=${option#* } told[${option%% *}]=$rest
    [[ $option == *' '* ]] || takes[$option]=
  done < <(_crumbnote_options <<<"$help")
  if [[ -n ${takes[$before]:-} ]]; then
    mapfile -t COMPREPLY < <(_crumbnote_values "${takes[$before]}" "$word" "${told[$before]}")
    return
  fi
  if [[ $word == -* ]]; then
    mapfile -t COMPREPLY < <(compgen -W "${!takes[*]}" -- "$word")
    return
  fi
  for ((i = 2; i < COMP_CWORD; i++)); do
    [[ ${COMP_WORDS[i]} == -* || -n ${takes[${COMP_WORDS[i-1]}]:-} ]] || ((++plain))
  done
  rest=$(_crumbnote_arguments <<<"$help" | sed -n "$((plain + 1))p")
  mapfile -t COMPREPLY < <(_crumbnote_values "$rest" "$word" '')
}
complete -o filenames -F _crumbnote crumbnote
