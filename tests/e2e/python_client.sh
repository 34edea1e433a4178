#!/usr/bin/env bash
# Compiles gRPC's own reflection and health protos for Python, then runs the independent client.
#
#   python_client.sh CLIENT.py PROTOC PROTO_FOLDER HOME TARGET CODE BUNDLE
set -euo pipefail
client=$1 protoc=$2 protos=$3 home=$4 target=$5 code=$6 bundle=$7
python=/usr/bin/python3
"$python" -c 'import grpc, google.protobuf' 2>/dev/null ||
  { echo "skipped: python3-grpcio and python3-protobuf are not installed"; exit 77; }
[ -d "$protos/grpc" ] || { echo "skipped: grpc-proto is not installed"; exit 77; }
mkdir -p "$home/python/grpc_reflection" "$home/python/grpc_health"
"$protoc" -I "$protos/grpc/reflection/v1alpha" --python_out="$home/python/grpc_reflection" reflection.proto
"$protoc" -I "$protos/grpc/health/v1" --python_out="$home/python/grpc_health" health.proto
exec "$python" "$client" "$target" "$code" "$bundle" "$home/python"
