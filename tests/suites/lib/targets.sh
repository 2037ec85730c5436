# Type-checks the core for a target that this machine cannot run. Sourced by the suite core.

# check_target TARGET CARGO_FLAGS…: with rustup's own standard library where rustup can fetch it, otherwise with
# Debian's rustc-web, which brings the sources of the standard library and builds it for the target (minutes, not seconds).
check_target() {
  local target=$1
  shift
  if rustup_has_target "$target"; then
    check "coilside-core type-checks for $target" \
      cargo check --locked -p coilside-core --lib --target "$target" "$@"
  else
    echo "rustup has no $target here: using Debian's rustc-web"
    if ! { [ -d /usr/lib/rustlib/src/rust/library ] && [ -x /usr/bin/cargo ] && [ -x /usr/bin/rustc ]; }; then
      apt_install rustc-web cargo-web rust-web-src || true
    fi
    # A target folder of its own: another compiler's files would push out ours.
    check "coilside-core type-checks for $target (Debian's rustc-web)" \
      env RUSTC=/usr/bin/rustc RUSTC_BOOTSTRAP=1 CARGO_TARGET_DIR="$root/target/targets" \
      /usr/bin/cargo check --locked -Zbuild-std=std,panic_abort -p coilside-core --lib --target "$target" "$@"
  fi
}

rustup_has_target() {
  command -v rustup >/dev/null || return 1
  rustup target list --installed 2>/dev/null | grep -qx "$1" && return 0
  timeout 300 rustup target add "$1" 2>&1
}
