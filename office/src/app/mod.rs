//! What the office does, one use case a file. Takes the time and fresh secrets as arguments; knows no HTTP.

pub(crate) mod customer;
pub(crate) mod day;
pub(crate) mod due_days;
pub(crate) mod export_record;
pub(crate) mod hand_out_assignments;
pub(crate) mod import_record;
pub(crate) mod join;
pub(crate) mod language;
pub(crate) mod library;
pub(crate) mod list_visits;
pub(crate) mod make_summary;
pub(crate) mod plan_day;
pub(crate) mod preview;
pub(crate) mod receive_events;
pub(crate) mod receive_photo;
pub(crate) mod receive_seal;
pub(crate) mod record;
pub(crate) mod sign_in;
pub(crate) mod unit_history;
pub(crate) mod used_table;
pub(crate) mod vouch;
