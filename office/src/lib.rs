//! The office: receives visits from field devices, shows them for review, and serves the owner's summary.
//!
//! Four parts, each knowing only those after it: `http` (routes, headers, pages), `app` (one use case a file),
//! `store` (an SQLite database and a folder), `wire` (what goes over the line).
#![forbid(unsafe_code)]

mod app;
pub mod check_pack;
mod connections;
pub mod demo;
mod http;
mod ids;
mod office;
pub mod record_file;
mod store;
mod wire;

pub use app::export_record::ExportError;
pub use app::hand_out_assignments::AssignmentError;
pub use app::import_record::{ImportError, Imported};
pub use app::library::LibraryError;
pub use http::openapi::text as openapi;
pub use ids::{Digest, NotAName, Secret, VisitId};
pub use office::{Office, OfficeError, OfficeSettings, open, serve};
pub use store::StoreError;
