//! The thinking of Coilside.
#[cfg(feature = "uniffi")]
uniffi::setup_scaffolding!("coilside");

pub mod science;
