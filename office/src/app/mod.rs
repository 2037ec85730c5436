//! What the office does, one use case a file. Takes the time and fresh secrets as arguments; knows no HTTP.

pub(crate) mod hand_out_assignments;
pub(crate) mod join;
pub(crate) mod receive_events;
pub(crate) mod receive_photo;
pub(crate) mod receive_seal;
pub(crate) mod sign_in;
