# Sourced by the shell tests: prints TAP. `check NAME COMMAND…` passes when the command does.
number=0
check() {
  local name=$1
  shift
  number=$((number + 1))
  if "$@"; then
    echo "ok $number - $name"
  else
    echo "not ok $number - $name"
  fi
}
# `same A B`: equal strings, both shown when they are not.
same() {
  [ "$1" = "$2" ] || { echo "# is:     $1" | head -20; echo "# wanted: $2" | head -20; return 1; }
}
crumbnote=$(realpath "${OUT:-build}/crumbnote")
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
# A small site of its own in $1: one good recipe, one page.
small_site() {
  mkdir -p "$1/recipes" "$1/pages"
  printf 'title: A small site\naddress: https://small.example/\n' >"$1/site.yaml"
  cat >"$1/recipes/rounds.md" <<'RECIPE'
---
title: Plain rounds
summary: Rounds for a test.
makes: 8 rounds
portion: 2 rounds
kind: griddle cake
minutes: {prepare: 10, bake: 12}
ingredients:
  - 60 g pea protein powder
  - 1/2 cup egg whites
  - 1/4 tsp baking powder
tags: [breakfast]
date: 2026-05-02
---
1. Whisk the egg whites with the powder and the baking powder.
2. Bake on the griddle until set.
RECIPE
  printf -- '---\ntitle: About\nsummary: A page.\nmenu: yes\n---\nHello.\n' >"$1/pages/about.md"
}
