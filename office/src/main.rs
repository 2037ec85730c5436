//! The program `coilside`: the demo, the browser shell, the office.

mod commands;

use std::process::ExitCode;

use clap::Parser as _;
use commands::Command;

#[tokio::main]
async fn main() -> ExitCode {
    match Command::parse().run().await {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("coilside: {error}");
            ExitCode::FAILURE
        }
    }
}
