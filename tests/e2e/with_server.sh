#!/usr/bin/env bash
# Starts a server with an empty file, runs a client against it, stops the server.
#
#   with_server.sh SERVER CLIENT...
#
# In CLIENT the words @TARGET@, @CODE@ and @HOME@ stand for the address, the host
# code (with the certificate's fingerprint after a dot over TCP) and a folder that is removed afterwards. Fails as the client does, or when
# the server does not stop in order. A client that exits with 77 was skipped.
set -euo pipefail
server=$1
shift
home=$(mktemp -d "${TMPDIR:-/tmp}/suppertide-e2e.XXXXXX")
pid=
finish() {
  [ -z "$pid" ] || kill -KILL "$pid" 2>/dev/null || true
  rm -rf "$home"
}
trap finish EXIT

"$server" --data "$home/household.sqlite" --listen "${E2E_LISTEN:-unix:$home/s}" >"$home/out" 2>"$home/err" &
pid=$!
for _ in $(seq 400); do
  grep -q '^Listening on ' "$home/out" && break
  kill -0 "$pid" 2>/dev/null || { echo "the server ended:"; cat "$home/err"; exit 1; }
  sleep 0.05
done
target=$(sed -n 's/^Listening on //p' "$home/out")
code=$(sed -n 's/.*Host code: //p' "$home/out")
[ -n "$target" ] && [ -n "$code" ] || { echo "the server tells no address and code:"; cat "$home/out" "$home/err"; exit 1; }

words=()
for word in "$@"; do
  word=${word//@TARGET@/$target}
  word=${word//@CODE@/$code}
  words+=("${word//@HOME@/$home}")
done
outcome=0
"${words[@]}" || outcome=$?

kill -TERM "$pid"
ended=0
wait "$pid" || ended=$?
pid=
[ "$outcome" -eq 0 ] || [ "$outcome" -eq 77 ] || { echo "the server's log:"; cat "$home/err"; exit "$outcome"; }
[ "$ended" -eq 0 ] || { echo "the server ended with $ended:"; cat "$home/err"; exit 1; }
if grep -qF "${code%%.*}" "$home/err"; then echo "the host code is in the log"; exit 1; fi
exit "$outcome"
