#compdef crumbnote
# Completion of crumbnote for zsh.
_crumbnote() {
  local -a commands
  commands=(
    'start:begin a site folder that builds as it is'
    'draft:a recipe to finish, from JSON-LD, a web page or plain text'
    'site:write the whole site'
    'check:report every problem, write nothing'
    'weigh:one ingredient line to grams and to kitchen measures'
    'macros:the figures of one recipe'
    'swap:one swap answered; without TO every known one'
    'trial:add a bake with a swap to the log'
    'cupboard:which recipes these ingredients can make'
    'formulate:amounts for a new recipe, from targets and a build'
    'release:publish the site in one step'
  )
  if (( CURRENT == 2 )); then
    _describe 'command' commands
    return
  fi
  case ${words[2]} in
    site) _arguments '--out[where the site is written]:folder:_files -/' '--workers[recipes worked on at a time]:number:' '--views[each page as JSON too]' '--json[one JSON document]' '--help[this command]' '*:site folder:_files -/' ;;
    release) _arguments '--to[the folder of releases]:folder:_files -/' '--keep[earlier releases kept]:number:' '--back[return to the release before]' '--gzip[x.gz beside each text file]' '--brotli[x.br likewise]' '--workers[recipes and pages worked on at a time]:number:' '--json[one JSON document]' '--help[this command]' '*:site folder:_files -/' ;;
    draft) _arguments '--to[a file to write, a folder to write into, or a site folder]:place:_files' '--number[which one, where FILE holds several recipes]:number:' '--json[one JSON document]' '--help[this command]' '2:file:_files' ;;
    check) _arguments '--as[what goes to standard output]:form:(text json annotations sarif)' '--stdin[check standard input as this file]:file:_files -g "*.md"' '--json[one JSON document]' '--help[this command]' '*:site folder:_files -/' ;;
    start) _arguments '--json[one JSON document]' '--help[this command]' '*:site folder:_files -/' ;;
    cupboard) _arguments '--short-of[recipes that lack so many things at the most]:count:' '--staples[salt, leaveners and flavourings are at hand too]' '--json[one JSON document]' '--help[this command]' '2:site folder:_files -/' '*:ingredient:' ;;
    trial) _arguments '--verdict[how it came out]:word:(works adjust different avoid)' '--date[year-month-day]:date:' '--liquid[added or held back]:amount:' '--texture[words]:words:' '--height[of the swapped bake]:length:' '--spread[of the swapped bake]:length:' '--weight[of the swapped bake]:weight:' '--as-written-height[of the bake as written]:length:' '--as-written-spread[of the bake as written]:length:' '--as-written-weight[of the bake as written]:weight:' '--picture[of the swapped bake]:file:' '--as-written-picture[of the bake as written]:file:' '--remarks[what you saw and tasted]:text:' '--by[who baked it]:name:' '--file[in trials/]:file:' '--json[one JSON document]' '--help[this command]' '2:recipe:_files -g "*.md"' '*:ingredient:' ;;
    formulate) _arguments '--folder[the site folder to learn from]:folder:_files -/' '--recipe[a recipe file]' '--json[one JSON document]' '--help[this command]' '2:brief:_files -g "*.y(a|)ml"' ;;
    macros|swap) _arguments '--json[one JSON document]' '--help[this command]' '2:recipe:_files -g "*.md"' '*:ingredient:' ;;
    *) _arguments '--json[one JSON document]' '--help[this command]' '*:line:' ;;
  esac
}
_crumbnote "$@"
