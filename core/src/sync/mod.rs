//! What to send next, and what an answer means. Sends nothing itself.
//!
//! Every request may be repeated without harm. Only the office's own word that something is on its disk makes it safe:
//! a page with status 200 from anything between does not.
//!
//! Events go first, then small pictures of large photographs, then the photographs themselves beside whatever is small. A small
//! picture makes nothing safe: it only shows the office sooner what is still to come.

mod access;
mod answer;
mod join;
mod news;
mod pace;
mod photo;
mod policy;
mod request;
mod sender;
mod skew;
mod slice;
mod state;
mod trouble;

pub use access::{Access, SignAsked, Token};
pub use answer::{Answer, Meaning, VisitPage, meaning};
pub use join::{Joined, Joining, Mistyped, NotJoined, read as read_join};
pub use pace::{Pace, retry_after_ms, wait_ms};
pub use photo::Stage;
pub use policy::{Kind, Link, Network, Over, Policy};
pub use request::{CLOCK, SendBody, SendRequest, What};
pub use sender::{EVENTS_MOST, Payload, Sender, Task, Waiting};
pub use skew::Skew;
pub use state::{Sending, Standing};
pub use trouble::{Hindrance, Trouble};

/// What the request of that id is about; none where it is none of ours.
#[must_use]
pub fn what_of(id: &str) -> Option<What> {
    What::of(id)
}
