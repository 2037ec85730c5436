//! The program `coilside`.
fn main() {}
