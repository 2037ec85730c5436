# What every suite shares: where things are, counting, and getting the tools. Sourced, not run.
# A suite counts with `check`, `cargo_tests` and `counted`, and always closes with the line `N passed, N failed`,
# also when it dies half-way: the trap below sees to that.
set -euo pipefail

root=$(cd "$(dirname "${BASH_SOURCE[0]}")/../../.." && pwd)
cd "$root"
export LC_ALL=C.UTF-8 CARGO_TERM_COLOR=never CARGO_TARGET_DIR=$root/target
venv=$root/target/venv

# shellcheck source=tests/suites/lib/tools.sh
source "$root/tests/suites/lib/tools.sh"
find_rust

passed=0
failed=0
finished=
begun=$SECONDS

# took NAME: how long the step now ending took, with what was installed for it; tests/run shows the longest of a run. The next one begins.
took() {
  echo "step $((SECONDS - begun)) s: $1"
  begun=$SECONDS
}

close_suite() {
  local code=$?
  trap - EXIT
  if [ -z "$finished" ]; then
    echo "FAILED: the suite ended early, with exit code $code"
    failed=$((failed + 1))
  fi
  echo "$passed passed, $failed failed"
  if [ "$failed" != 0 ] || [ "$passed" = 0 ]; then exit 1; fi
  exit 0
}
trap close_suite EXIT

# Called last by every suite.
finish() { finished=yes; exit 0; }

# A tool that cannot be had fails the suite.
cannot() {
  echo "FAILED: $*"
  failed=$((failed + 1))
  finish
}

fail() {
  echo "FAILED: $*"
  failed=$((failed + 1))
}

# check NAME COMMAND…: one check, passed if the command succeeds.
check() {
  local name=$1
  shift
  echo "--- $name"
  if "$@"; then
    echo "ok: $name"
    passed=$((passed + 1))
  else
    fail "$name"
  fi
  took "$name"
}

# add NAME EXIT_CODE PASSED FAILED: takes over the counts of a program. It has failed as well if it ended with an
# error without counting one, and if it tested nothing.
add() {
  local name=$1 code=$2 good=$3 bad=$4
  if [ "$code" != 0 ] && [ "$bad" = 0 ]; then
    echo "FAILED: $name ended with exit code $code"
    bad=1
  elif [ "$good" = 0 ] && [ "$bad" = 0 ]; then
    echo "FAILED: $name tested nothing"
    bad=1
  fi
  passed=$((passed + good))
  failed=$((failed + bad))
  took "$name"
}

# counted NAME COMMAND…: runs a program that closes with `N passed, N failed` and adds its counts.
counted() {
  local name=$1 out code=0 good=0 bad=0
  shift
  echo "--- $name"
  out=$(mktemp)
  "$@" 2>&1 | tee "$out" || code=${PIPESTATUS[0]}
  if [[ $(grep -E '^[0-9]+ passed, [0-9]+ failed$' "$out" | tail -n 1) =~ ^([0-9]+)\ passed,\ ([0-9]+)\ failed$ ]]; then
    good=${BASH_REMATCH[1]}
    bad=${BASH_REMATCH[2]}
  else
    echo "$name did not close with a line \`N passed, N failed\`"
    bad=1
  fi
  rm -f "$out"
  add "$name" "$code" "$good" "$bad"
}

# Every crate with every test, program and example: once, with the features that all of them need together. Each call that names one
# package alone would build the core anew for other features, so what follows asks for tests of the whole workspace by their names.
build_everything() {
  need_rust
  mkdir -p "$root/target"
  touch "$root/target/everything-is-wanted"
  check "everything is built" cargo build --locked --workspace --all-targets
  export COILSIDE_BIN=$root/target/debug/coilside
}

# What the shells of phones are tested with: the core as a phone gets it with its bindings, and an office for it to send to, which is built
# on while the shell compiles; call await_office before the tests. Where another suite has had everything built, that is taken, since a
# second set of features would build the core once more.
build_for_phones() {
  office_log=
  export COILSIDE_BIN=$root/target/debug/coilside
  if [ -e "$root/target/everything-is-wanted" ]; then
    build_everything
  else
    need_cargo
    # Built once and run for some minutes: what little is asked of these need not be fast, nobody looks for lines, and nothing is built twice.
    export CARGO_INCREMENTAL=0
    local quick=(--config profile.dev.debug=false) crate
    for crate in coilside-picture fast_image_resize fdeflate image image-webp jpeg-decoder libsqlite3-sys png rxing toml toml_parser zune-core zune-jpeg; do
      quick+=(--config "profile.dev.package.$crate.opt-level=0")
    done
    check "the core is built" cargo build --locked -p coilside-bindings "${quick[@]}"
    office_log=$(mktemp)
    # With the bindings again, for the features of their core.
    cargo build --locked -p coilside-bindings -p coilside-office --no-default-features "${quick[@]}" >"$office_log" 2>&1 &
    office_coming=$!
  fi
  check "the bindings are written" bindings/generate --built
}

await_office() {
  if [ -z "$office_log" ]; then return; fi
  check "an office is built" wait "$office_coming"
  cat "$office_log"
  core_stayed() { ! grep 'Compiling coilside-core' "$office_log"; }
  check "the office takes the core that the phone has (else see bindings/Cargo.toml)" core_stayed
  rm -f "$office_log"
}

# A record file for readers that are not ours; they find it in COILSIDE_SAMPLE_RECORD.
write_sample_record() {
  export COILSIDE_SAMPLE_RECORD=$root/target/records/sample.zip
  mkdir -p "$root/target/records"
  check "a sample record is written" "$root/target/debug/examples/sample_record" "$COILSIDE_SAMPLE_RECORD"
}

# tests_named NAME…: cargo's integration tests of those names.
tests_named() {
  local name named=()
  for name in "$@"; do named+=(--test "$name"); done
  cargo_tests --workspace "${named[@]}"
}

# names_in FOLDER: what cargo calls the integration tests there.
names_in() {
  find "$1" -mindepth 1 -maxdepth 1 -name '*.rs' -printf '%f\n' | sed 's/\.rs$//'
  find "$1" -mindepth 2 -maxdepth 2 -name main.rs -printf '%h\n' | xargs -r -n 1 basename
}

# cargo_tests ARGUMENTS…: `cargo test` with its counts summed up. An ignored test counts as failed: nothing is skipped.
cargo_tests() {
  local name="cargo test $*" out code=0 good bad ignored
  echo "--- $name"
  out=$(mktemp)
  cargo test --locked --no-fail-fast "$@" 2>&1 | tee "$out" || code=${PIPESTATUS[0]}
  good=$(sum_results passed "$out")
  bad=$(sum_results failed "$out")
  ignored=$(sum_results ignored "$out")
  rm -f "$out"
  if [ "$ignored" != 0 ]; then
    echo "FAILED: $ignored ignored tests in $name. Run them or delete them"
  fi
  add "$name" "$code" "$good" "$((bad + ignored))"
}

# sum_results WORD FILE: the sum of that column over the lines `test result: ok. 3 passed; 0 failed; 0 ignored; …`.
sum_results() {
  sed -nE "s/^test result: .* ([0-9]+) $1;.*/\1/p" "$2" | awk '{ n += $1 } END { print n + 0 }'
}
