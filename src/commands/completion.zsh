#compdef crumbnote
# Completion of crumbnote for zsh. What there is to complete is asked of the program itself, whose
# help names the commands, their options and what these take: nothing here to be kept in step.

# Reads a command's help; prints a spec of _arguments for each option and plain argument.
_crumbnote_specs() {
  LC_ALL=C awk '
    function action(kind, help) {
      if (kind == "DIR" || kind == "FOLDER") return "_files -/"
      if (kind == "FILE" || kind == "PLACE") return "_files"
      if (kind == "RECIPE") return "_files -g \"*.md\""
      if (help ~ /^[a-z]+(, [a-z]+)* or [a-z]+$/) { gsub(/,/, "", help); sub(/ or /, " ", help); return "(" help ")" }
      return " "
    }
    NR == 1 { for (i = 4; i <= NF; i++) {
      if ($i ~ /^\[?--/) { if ($i !~ /\]$/) i++; continue }
      many = $i ~ /\303|\342|\.\.\./ ? "*" : ++plain + 1
      gsub(/[^A-Z]/, "", $i); print many ":" tolower($i) ":" action($i, "") } }
    /^Options:/ { on = 1 }
    on && /^  --/ {
      left = substr($0, 3, 39); help = substr($0, 43); split(left, part, " +")
      shown = help; gsub(/\[|\]|:|\\/, "", shown)
      print part[1] "[" shown "]" (part[2] == "" ? "" : ":" tolower(part[2]) ":" action(part[2], help)) }'
}

_crumbnote() {
  local program=$words[1]
  local -a found
  if (( CURRENT == 2 )); then
    found=("${(@f)$($program --help 2>/dev/null | LC_ALL=C awk '
      function say() { if (name) { sub(/^ +/, "", help); print name ":" help } }
      /^  [a-z]/ { say(); name = $1; help = substr($0, 43) }
      substr($0, 1, 42) ~ /^ +$/ { help = substr($0, 43) }
      END { say() }')}")
    _describe command found
    return
  fi
  found=("${(@f)$($program $words[2] --help 2>/dev/null | _crumbnote_specs)}")
  [[ -n $found[1] ]] && _arguments '1:command:' $found
}
_crumbnote "$@"
