#!/usr/bin/env bash
# The server as a program: what it prints, how it ends, what it refuses.
#
#   server_program.sh SERVER
set -euo pipefail
server=$1
home=$(mktemp -d "${TMPDIR:-/tmp}/suppertide-program.XXXXXX")
pids=()
finish() {
  for pid in "${pids[@]}"; do kill -KILL "$pid" 2>/dev/null || true; done
  rm -rf "$home"
}
trap finish EXIT
fail() {
  echo "$1"
  cat "$home"/*.out "$home"/*.err 2>/dev/null || true
  exit 1
}

# refused CODE TEXT ARGUMENT...: ends with CODE at once and says TEXT in one line.
refused() {
  local wanted=$1 text=$2 outcome=0
  shift 2
  timeout 20 "$server" "$@" >"$home/refused.out" 2>"$home/refused.err" || outcome=$?
  [ "$outcome" -eq "$wanted" ] || fail "$* ended with $outcome instead of $wanted"
  grep -q -- "$text" "$home/refused.err" || fail "$* does not say: $text"
  [ "$(wc -l <"$home/refused.err")" -eq 1 ] && grep -q '^suppertide-server: ' "$home/refused.err" ||
    fail "$* does not say it in one line"
}

# start NAME ARGUMENT...: its output in NAME.out; the process in $started.
start() {
  local name=$1
  shift
  "$server" "$@" >"$home/$name.out" 2>"$home/$name.err" &
  started=$!
  pids+=("$started")
  for _ in $(seq 400); do
    grep -qs '^Listening on ' "$home/$name.out" && return
    kill -0 "$started" 2>/dev/null || fail "$name ended"
    sleep 0.05
  done
  fail "$name does not listen"
}

# stop PROCESS SIGNAL: must end in order.
stop() {
  local outcome=0
  kill "-$2" "$1"
  wait "$1" || outcome=$?
  [ "$outcome" -eq 0 ] || fail "$2 gave exit code $outcome"
}

"$server" --version | grep -qE '^suppertide-server [0-9]+\.[0-9]+\.[0-9]+$' || fail "no version"
for word in --data --listen --certificate --key --plain --calendar --metrics --log-level --planning-threads --version \
  SUPPERTIDE_DATA SUPPERTIDE_LISTEN backup restore doctor Examples; do
  "$server" --help | grep -q -- "$word" || fail "help lacks $word"
done

refused 2 'nonsense' --nonsense
refused 2 'planning-threads' --planning-threads 0
refused 2 'loopback' --plain --listen 0.0.0.0:0
refused 2 'in numbers' --listen 127.example.org:0
refused 2 'key' --certificate "$home/none.pem"
refused 2 'loopback' --metrics 0.0.0.0:9464
refused 2 'HOST:PORT' --listen 127.0.0.1
refused 1 "$home/none" --data "$home/none/household.sqlite" --listen "unix:$home/x"
echo 'no database at all, but some text' >"$home/letter"
refused 1 "data file $home/letter: " --data "$home/letter" --listen "unix:$home/x"
refused 1 'there is no such file' doctor "$home/none.sqlite"
refused 1 'there is no such file' backup --data "$home/none.sqlite" "$home/copy.sqlite"
refused 1 "there is no folder $home/none" --data "$home/none/household.sqlite" --listen "unix:$home/x"
grep -q 'no database at all' "$home/letter" || fail "a file of something else was written to"

start first --data "$home/a.sqlite" --listen 127.0.0.1:0
first=$started
grep -qE '^No household yet. Host code: [A-Z2-9]{4}-[A-Z2-9]{4}-[A-Z2-9]{4}\.[0-9a-f]{64}$' "$home/first.out" ||
  fail "no host code with a fingerprint"
for private in a.sqlite a.sqlite.key.pem; do
  [ "$(stat -c %a "$home/$private")" = 600 ] || fail "others can read $private"
done
port=$(sed -n 's/^Listening on 127\.0\.0\.1://p' "$home/first.out")
refused 1 'taken' --data "$home/b.sqlite" --listen "127.0.0.1:$port"
refused 1 "a.sqlite" --data "$home/a.sqlite" --listen 127.0.0.1:0
"$server" backup --data "$home/a.sqlite" "$home/copy.sqlite" | grep -q '0 households' || fail "no backup while it is served"
"$server" doctor "$home/copy.sqlite" | grep -q 'Nothing wrong was found' || fail "the copy is not well"
refused 1 'already' backup --data "$home/a.sqlite" "$home/copy.sqlite"
refused 1 'another server' restore --replace --data "$home/a.sqlite" "$home/copy.sqlite"
refused 1 'damaged' doctor "$home/letter"
stop "$first" TERM
grep -q 'event=stopped' "$home/first.err" || fail "the end is not logged"

refused 1 'already' restore --data "$home/a.sqlite" "$home/copy.sqlite"
"$server" restore --replace --data "$home/a.sqlite" "$home/copy.sqlite" | grep -q '^Restored' || fail "no restore"
[ -f "$home/a.sqlite.before-restore" ] || fail "the file before is gone"
"$server" restore --replace --data "$home/a.sqlite" "$home/copy.sqlite" | grep -q 'kept as .*before-restore-2\.$' ||
  fail "a second restore does not tell where it keeps the file before"
"$server" restore --replace --data "$home/fresh.sqlite" "$home/copy.sqlite" | grep -q 'kept as' &&
  fail "a file is told of that never was"
refused 1 'data file itself' restore --replace --data "$home/a.sqlite" "$home/a.sqlite"
python3 - "$home/copy.sqlite" <<'END'
import sqlite3, sys
sqlite3.connect(sys.argv[1]).execute("CREATE TABLE notes (x)")
END
wrong=0
"$server" doctor "$home/copy.sqlite" >"$home/doctor.out" || wrong=$?
[ "$wrong" -eq 3 ] && grep -q 'table notes' "$home/doctor.out" || fail "doctor finds no foreign table"

# A service manager hears that the server is ready, and that it stops.
python3 - "$home/manager" >"$home/told.txt" <<'END' &
import socket, sys
manager = socket.socket(socket.AF_UNIX, socket.SOCK_DGRAM)
manager.bind(sys.argv[1])
manager.settimeout(60)
print(manager.recv(100).decode(), manager.recv(100).decode())
END
manager=$!
pids+=("$manager")
for _ in $(seq 400); do [ -S "$home/manager" ] && break; sleep 0.05; done
NOTIFY_SOCKET="$home/manager" start managed --data "$home/n.sqlite" --listen "unix:$home/n"
stop "$started" TERM
wait "$manager"
grep -q '^READY=1 STOPPING=1$' "$home/told.txt" || fail "the service manager was not told"

SUPPERTIDE_METRICS=127.0.0.1:0 start measured --data "$home/m.sqlite" --listen "unix:$home/m"
metrics=$(sed -n 's/^Metrics on //p' "$home/measured.out")
python3 -c 'import sys, urllib.request; print(urllib.request.urlopen(sys.argv[1], timeout=20).read().decode())' \
  "$metrics" >"$home/metrics.txt"
grep -q '^suppertide_open_streams 0$' "$home/metrics.txt" || fail "no metrics"
stop "$started" TERM

SUPPERTIDE_DATA="$home/a.sqlite" SUPPERTIDE_LISTEN="unix:$home/s" start second
second=$started
refused 1 'another server' --data "$home/b.sqlite" --listen "unix:$home/s"
code=$(grep -oE '[A-Z2-9]{4}(-[A-Z2-9]{4}){2}' "$home/second.out")
[ "$code" != "$(grep -oE '[A-Z2-9]{4}(-[A-Z2-9]{4}){2}' "$home/first.out")" ] || fail "the host code is an old one"
grep -qF "$code" "$home/second.err" && fail "the host code is in the log"
stop "$second" INT
[ ! -e "$home/s" ] || fail "the socket is left behind"
echo ok
