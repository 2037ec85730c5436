# Short names for the scripts that continuous integration calls as well. `just` alone lists them.

[private]
default:
    @just --list --unsorted

# Formatting, lints and docs: the quick half of the suite core
check:
    tests/suites/core quick

# All suites, or those named
test *names:
    tests/run {{names}}

# Formats, and mends what clippy can mend by itself
fix:
    cargo fmt --all
    cargo clippy --fix --allow-dirty --allow-staged --workspace --all-targets

# Kotlin, Swift and Python bindings into target/bindings
bindings:
    bindings/generate

# Which tools are there, and which a test run would install
doctor:
    tests/run --doctor

# An office and a browser shell with an invented scenario
demo:
    cargo run --release -- demo
