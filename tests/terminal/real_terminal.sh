#!/usr/bin/env bash
# One sitting in a real terminal (tmux): keys, a decision, a smaller window, suspending, an end, and a crash, after each of
# which the shell must be as it was. usage: real_terminal.sh PROGRAM SOURCE_TREE
set -u
program=$1
input=$2/tests/golden/small-site/input
command -v tmux >/dev/null || { echo "skipped: no tmux"; exit 77; }
work=$(mktemp -d)
socket=$work/tmux
screen() { tmux -S "$socket" capture-pane -t sitting -p; }
keys() { tmux -S "$socket" send-keys -t sitting "$@"; }
cleanup() { tmux -S "$socket" kill-server 2>/dev/null; rm -rf "$work"; }
trap cleanup EXIT
fail() { echo "FAILED: $1"; screen; exit 1; }
# Waits until the screen shows the words, for ten seconds at most.
shows() {
  for _ in $(seq 100); do screen | grep -qF -- "$1" && return 0; sleep 0.1; done
  fail "the screen never showed: $1"
}
cd "$work" || exit 1
{
  "$program" create site.wms --name "The tender" --coder anna && "$program" list site.wms places "$input/places.csv" &&
    "$program" list site.wms equipment "$input/equipment.csv" && "$program" take-in site.wms "$input/interviews.csv" &&
    "$program" evidence site.wms "$input/entries.csv" && "$program" propose site.wms && "$program" weigh site.wms
} >log 2>&1 || { cat log; exit 1; }

tmux -S "$socket" -f /dev/null new-session -d -s sitting -x 80 -y 24 "env PS1='shell> ' bash --norc --noprofile"
shows "shell>"
keys "$program review site.wms --coder anna" Enter
shows "2 interviews"
keys 2
shows "5 claims"
keys s
shows "said so. Saved; u undoes: ends"
"$program" review site.wms --coder bo --script <(echo show) >read.txt || fail "a second coder could not read"
grep -q "bo, reading only" read.txt || fail "a second coder was not told that somebody else is editing"
tmux -S "$socket" resize-window -t sitting -x 40 -y 10
shows "== 5 claims, in review order; withhel"   # cut to the width
shows "> . "
tmux -S "$socket" resize-window -t sitting -x 100 -y 30
keys C-z
shows "Stopped"
keys "fg" Enter
shows "5 claims"
keys Escape q
shows "shell>"
keys "clear; stty -a | tr ' ' '\\n' | grep -x echo && echo as it was" Enter
shows "as it was"
keys "clear; $program review site.wms --coder anna" Enter
shows "1 of   5 decided"
kill -SEGV "$(pgrep -f "review site.wms --coder anna" -P "$(tmux -S "$socket" display-message -p -t sitting '#{pane_pid}')")"
shows "shell>"
keys "clear; stty -a | tr ' ' '\\n' | grep -x echo && echo sane again" Enter
shows "sane again"
"$program" verify site.wms || fail "the site file has a fault"
echo "a real terminal: all as it should be"
