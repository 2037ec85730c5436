//! The program `coilside`: the demo, the browser shell, the office, record files.

mod commands;

use std::process::ExitCode;

use clap::Parser as _;
use coilside_office::record_file::RecordFileError;
use commands::Command;

#[tokio::main]
async fn main() -> ExitCode {
    match Command::parse().run().await {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("coilside: {error}");
            error.downcast_ref::<RecordFileError>().map_or(ExitCode::FAILURE, |error| error.exit_code().into())
        }
    }
}
