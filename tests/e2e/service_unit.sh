#!/usr/bin/env bash
# The unit that is installed: understood by the service manager, and well shut in.
#
#   service_unit.sh SYSTEMD_ANALYZE UNIT SERVER
set -euo pipefail
analyze=$1 unit=$2 server=$3
home=$(mktemp -d "${TMPDIR:-/tmp}/suppertide-unit.XXXXXX")
trap 'rm -rf "$home"' EXIT
# The program is not installed where the unit has it.
sed "s#^ExecStart=.*#ExecStart=$server#" "$unit" >"$home/suppertide-server.service"
"$analyze" verify "$home/suppertide-server.service" 2>&1 | tee "$home/said"
! grep -q suppertide-server "$home/said" || { echo "the unit has mistakes"; exit 1; }
"$analyze" security --help 2>&1 | grep -q -- --offline || exit 0
# Exposure out of 10, less is better; 20 is 2.0.
"$analyze" security --offline=true --threshold=20 "$home/suppertide-server.service" | tail -n 1
