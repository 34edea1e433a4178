# Debian 12 packages by use, and a function that installs what is missing. Sourced by demo/run and tests/run.

server_packages="g++ cmake ninja-build pkg-config ccache python3
  protobuf-compiler protobuf-compiler-grpc libprotobuf-dev libgrpc++-dev
  libsqlite3-dev libsodium-dev libssl-dev libcadical-dev libspdlog-dev prometheus-cpp-dev nlohmann-json3-dev
  libcli11-dev libcpp-httplib-dev libpango1.0-dev fonts-dejavu-core tzdata"
window_packages="qt6-base-dev qt6-declarative-dev qt6-declarative-dev-tools libgl-dev
  qml6-module-qtqml qml6-module-qtqml-models qml6-module-qtqml-workerscript qml6-module-qtquick
  qml6-module-qtquick-window qml6-module-qtquick-controls qml6-module-qtquick-layouts
  qml6-module-qtquick-templates qml6-module-qtquick-shapes qt6-l10n-tools libqrencode-dev fonts-dejavu-core fontconfig"
test_packages="libgtest-dev libgmock-dev libbenchmark-dev libsundials-dev libical-dev poppler-utils qml6-module-qttest dbus-daemon
  python3-grpcio python3-protobuf grpc-proto"

# install_missing WHY PACKAGE...: says what it installs and why; does nothing when all is there.
install_missing() {
  local why=$1 missing=() package
  shift
  for package in "$@"; do
    dpkg-query -W -f '${Status}' "$package" 2>/dev/null | grep -q 'ok installed' || missing+=("$package")
  done
  [ ${#missing[@]} -eq 0 ] && return 0
  local as_root=()
  if [ "$(id -u)" -ne 0 ]; then
    command -v sudo >/dev/null || { echo "Needs root or sudo to install: ${missing[*]}" >&2; return 1; }
    as_root=(sudo)
  fi
  echo "Installing ${#missing[@]} Debian packages ($why): ${missing[*]}"
  "${as_root[@]}" apt-get update -qq
  "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "${missing[@]}" >/dev/null
}
