# Finds the tools, and installs what is missing: apt-get for Debian's packages, rustup, pip and npm for the rest.
# Sourced by common.sh. Whoever cannot get a tool calls `cannot`, which fails the suite.

# With sudo the PATH often loses cargo, and rustup would look for its tool chains in root's home.
find_rust() {
  local home=$HOME
  if ! command -v cargo >/dev/null && [ -n "${SUDO_USER:-}" ]; then
    home=$(getent passwd "$SUDO_USER" | cut -d: -f6)
    export CARGO_HOME=${CARGO_HOME:-$home/.cargo} RUSTUP_HOME=${RUSTUP_HOME:-$home/.rustup}
  fi
  if ! command -v cargo >/dev/null; then PATH=$home/.cargo/bin:$PATH; fi
  export PATH
}

as_root() {
  if [ "$(id -u)" = 0 ]; then
    "$@"
  elif command -v sudo >/dev/null; then
    sudo -n "$@"
  else
    echo "neither root nor sudo: cannot run $*"
    return 1
  fi
}

# apt_install PACKAGE…: the package lists are refreshed only if the install fails without.
apt_install() {
  if ! command -v apt-get >/dev/null; then
    echo "no apt-get here: install by hand what Debian calls $*"
    return 1
  fi
  echo "installing $*"
  local install=(env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "$@")
  mkdir -p "$root/target"
  (
    flock 7 # apt-get would give up where another call of ours holds its lock
    as_root "${install[@]}" >/dev/null 2>&1 && exit 0
    as_root env DEBIAN_FRONTEND=noninteractive apt-get update -qq || true
    as_root "${install[@]}" >/dev/null
  ) 7>"$root/target/apt.lock"
}

# need COMMAND PACKAGE…: the command is there, or its Debian packages are installed.
need() {
  local command=$1
  shift
  command -v "$command" >/dev/null && return 0
  apt_install "$@" || true
  command -v "$command" >/dev/null || cannot "no $command, and it could not be installed (Debian: $*)"
}

need_cargo() {
  command -v cargo >/dev/null || cannot "no cargo: install Rust from https://rustup.rs, stable tool chain"
  need cc gcc libc6-dev
}

need_rust() {
  need_cargo
  # libjpeg-turbo is built from its sources; without nasm it would be slow.
  need cmake cmake
  need nasm nasm
}

# need_rust_component CARGO_SUBCOMMAND COMPONENT
need_rust_component() {
  cargo "$1" --version >/dev/null 2>&1 && return 0
  rustup component add "$2" || cannot "no cargo $1, and rustup could not add $2"
}

# The Python environment of the project, with tests/python/requirements.txt and, if there is one, tests/outside's.
need_venv() {
  local wanted=("$root/tests/python/requirements.txt")
  if [ -f "$root/tests/outside/requirements.txt" ]; then wanted+=("$root/tests/outside/requirements.txt"); fi
  make_venv "$venv" "${wanted[@]}"
}

# make_venv FOLDER REQUIREMENTS…: a Python environment with these packages, made anew if they changed.
make_venv() {
  local folder=$1 stamp=$1/requirements.seen args=() file
  shift
  if [ -f "$stamp" ] && cat "$@" | cmp -s - "$stamp"; then return 0; fi
  need python3 python3 python3-venv
  python3 -c 'import venv, ensurepip' 2>/dev/null || apt_install python3-venv || true
  rm -rf "$folder"
  python3 -m venv "$folder" || cannot "no Python environment could be made (Debian: python3-venv)"
  for file in "$@"; do args+=(-r "$file"); done
  "$folder/bin/pip" install --quiet --disable-pip-version-check "${args[@]}" \
    || cannot "the Python packages of $* could not be installed"
  cat "$@" >"$stamp"
}

# The packages of tests/browser, as its package-lock.json fixes them.
need_node_packages() {
  local folder=$root/tests/browser stamp=$root/tests/browser/node_modules/.lock.seen
  need node nodejs
  need npm npm
  node -e 'process.exit(parseInt(process.versions.node) < 18 ? 1 : 0)' \
    || cannot "Node $(node --version) is too old: 18 or newer is needed"
  cmp -s "$folder/package-lock.json" "$stamp" && return 0
  (cd "$folder" && npm ci --no-audit --no-fund --loglevel=error) || cannot "npm ci failed in tests/browser"
  cp "$folder/package-lock.json" "$stamp"
}

need_chromium() {
  if ! [ -x /usr/bin/chromium ]; then
    apt_install chromium fonts-dejavu-core || true
    [ -x /usr/bin/chromium ] || cannot "no /usr/bin/chromium, and it could not be installed (Debian: chromium)"
  fi
}

# A JDK, Maven, and the compiler of Android's resources. Android itself comes from Maven Central.
need_android() {
  need javac openjdk-17-jdk-headless
  need mvn maven
  need aapt2 aapt
  need python3 python3
}
