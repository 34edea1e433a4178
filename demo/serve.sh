# Serves the sample feast: sourced by run and screens, which set $build and $home and stop
# $server_pid at their end. Sets server_pid, target and event.
target="unix:$home/server.sock"
"$build/server/suppertide-server" --data "$home/household.sqlite" --listen "$target" --log-level warn \
  >"$home/server.out" 2>"$home/server.err" &
server_pid=$!
for _ in $(seq 100); do
  [ -S "$home/server.sock" ] && grep -q . "$home/server.out" && break
  kill -0 "$server_pid" 2>/dev/null || { cat "$home/server.err"; exit 1; }
  sleep 0.05
done
code=$(grep -oE '[A-Z0-9]{4}(-[A-Z0-9]{4}){2}' "$home/server.out" | head -n 1)
"$build/client/suppertide" join "$target" --host-code "$code" --name Host --household Demo --time-zone UTC >/dev/null
"$build/client/suppertide" import demo/feast.json >/dev/null
event=$("$build/client/suppertide" events --json | python3 -c 'import json,sys; print(json.load(sys.stdin)["events"][0]["id"])')
