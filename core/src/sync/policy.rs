//! Over which network what may go: the person's wish for each kind, and what carries requests just now.

use serde::{Deserialize, Serialize};

/// What carries requests now, as the shell knows it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Network {
    /// What kind of network there is.
    pub link: Link,
    /// How long the shell can still send, milliseconds, where the system gives it a short span in the background. None
    /// where it can go on. What cannot make progress in that time is not begun.
    pub window_ms: Option<i64>,
    /// Whether the shell was started with an office's address. Without one only an office that was joined is reached.
    pub office: bool,
}

impl Default for Network {
    /// A network that costs nothing, for as long as it takes, to the office that the shell knows.
    fn default() -> Self {
        Network { link: Link::Unmetered, window_ms: None, office: true }
    }
}

/// A kind of network.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum Link {
    /// None.
    None,
    /// One that is paid by what goes over it.
    Metered,
    /// Wi-Fi, a cable, or one of which nothing else is known.
    #[default]
    Unmetered,
}

/// Kinds of what is sent, each with a wish of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Events and seals: small, first.
    Events,
    /// Small pictures of large photographs, ahead of them.
    Previews,
    /// Photographs as they were taken.
    Originals,
}

impl Kind {
    /// Every kind.
    pub const ALL: [Kind; 3] = [Kind::Events, Kind::Previews, Kind::Originals];

    /// The setting that holds its wish.
    #[must_use]
    pub const fn setting(self) -> &'static str {
        match self {
            Kind::Events => "send-events",
            Kind::Previews => "send-previews",
            Kind::Originals => "send-originals",
        }
    }
}

/// A person's wish for a kind.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Over {
    /// Over any network.
    #[default]
    Any,
    /// Only where it costs nothing.
    Unmetered,
    /// Over any network and without waiting, until nothing waits any more: a person pressed 'send now'. Never stored.
    Now,
}

impl Over {
    /// The wish as a setting has it; any network where there is none.
    #[must_use]
    pub fn read(setting: Option<&str>) -> Over {
        if setting == Some("unmetered") { Over::Unmetered } else { Over::Any }
    }
}

/// The wishes for all kinds.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Policy {
    /// For events and seals.
    pub events: Over,
    /// For small pictures ahead of photographs.
    pub previews: Over,
    /// For photographs as they were taken.
    pub originals: Over,
}

impl Policy {
    /// The wish for a kind.
    #[must_use]
    pub const fn of(&self, kind: Kind) -> Over {
        match kind {
            Kind::Events => self.events,
            Kind::Previews => self.previews,
            Kind::Originals => self.originals,
        }
    }

    /// The same with another wish for a kind.
    #[must_use]
    pub const fn with(self, kind: Kind, over: Over) -> Policy {
        match kind {
            Kind::Events => Policy { events: over, ..self },
            Kind::Previews => Policy { previews: over, ..self },
            Kind::Originals => Policy { originals: over, ..self },
        }
    }

    /// Whether a kind may go over a network.
    #[must_use]
    pub fn allows(&self, kind: Kind, link: Link) -> bool {
        match link {
            Link::None => false,
            Link::Metered => self.of(kind) != Over::Unmetered,
            Link::Unmetered => true,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_kind_goes_only_where_its_own_wish_lets_it() {
        let policy = Policy::default().with(Kind::Originals, Over::Unmetered);
        for (link, events, originals) in
            [(Link::None, false, false), (Link::Metered, true, false), (Link::Unmetered, true, true)]
        {
            assert_eq!(policy.allows(Kind::Events, link), events, "{link:?}");
            assert_eq!(policy.allows(Kind::Originals, link), originals, "{link:?}");
        }
        let now = policy.with(Kind::Originals, Over::Now);
        assert!(now.allows(Kind::Originals, Link::Metered) && !now.allows(Kind::Originals, Link::None));
    }

    #[test]
    fn a_setting_that_nobody_wrote_or_that_is_not_known_means_any_network() {
        assert_eq!([Over::read(None), Over::read(Some("maybe"))], [Over::Any; 2]);
        assert_eq!(Over::read(Some("unmetered")), Over::Unmetered);
    }
}
