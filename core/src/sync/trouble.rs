//! Why something does not go on, as kinds that have words of their own: what it is, and what to do. The office's own words
//! are written for its programmers; a technician gets these.

/// Why a row is stuck: the same request will never do.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Trouble {
    /// The office has other events of this visit.
    Conflict,
    /// The visit comes from another device.
    AnotherDevice,
    /// Another device goes on with the visit.
    TakenOver,
    /// It is more than the office takes.
    TooLarge,
    /// Another length was announced for the photograph.
    OtherLength,
    /// The office knows another key of this device.
    OtherKey,
    /// The visit is sealed there with other content.
    SealedOtherwise,
    /// Something that is no addendum came after the seal.
    NoAddendum,
    /// Office and device speak different versions.
    Version,
    /// The office cannot read it.
    NotRead,
    /// The photograph's file is not on this device any more, or is another one.
    FileGone,
    /// Anything else that the office refused.
    Refused,
}

impl Trouble {
    /// Every kind.
    pub const ALL: [Trouble; 12] = [
        Trouble::Conflict,
        Trouble::AnotherDevice,
        Trouble::TakenOver,
        Trouble::TooLarge,
        Trouble::OtherLength,
        Trouble::OtherKey,
        Trouble::SealedOtherwise,
        Trouble::NoAddendum,
        Trouble::Version,
        Trouble::NotRead,
        Trouble::FileGone,
        Trouble::Refused,
    ];

    /// Its name in the store and in the keys of its words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Trouble::Conflict => "conflict",
            Trouble::AnotherDevice => "another-device",
            Trouble::TakenOver => "taken-over",
            Trouble::TooLarge => "too-large",
            Trouble::OtherLength => "other-length",
            Trouble::OtherKey => "other-key",
            Trouble::SealedOtherwise => "sealed-otherwise",
            Trouble::NoAddendum => "no-addendum",
            Trouble::Version => "version",
            Trouble::NotRead => "not-read",
            Trouble::FileGone => "file-gone",
            Trouble::Refused => "refused",
        }
    }

    /// The trouble of that name; what an earlier version wrote in words counts as refused.
    #[must_use]
    pub fn named(name: &str) -> Trouble {
        Trouble::ALL.into_iter().find(|trouble| trouble.name() == name).unwrap_or(Trouble::Refused)
    }

    /// What a kind of refusal means for events and seals.
    pub(super) fn of_kind(kind: &str) -> Trouble {
        match kind {
            "conflict" => Trouble::Conflict,
            "another-device" | "other-writer" => Trouble::AnotherDevice,
            "taken-over" => Trouble::TakenOver,
            "too-many-events" => Trouble::TooLarge,
            "other-key" => Trouble::OtherKey,
            "sealed-otherwise" => Trouble::SealedOtherwise,
            "no-addendum" => Trouble::NoAddendum,
            "address" | "tus-version" | "content-type" => Trouble::Version,
            "events" | "seal" | "json" | "visit" | "device" | "metadata" | "header" | "photo" => Trouble::NotRead,
            _ => Trouble::Refused,
        }
    }

    /// What a kind of refusal means for photographs.
    pub(super) fn of_photo(kind: &str) -> Trouble {
        match kind {
            "length" => Trouble::TooLarge,
            "other-length" => Trouble::OtherLength,
            kind => Trouble::of_kind(kind),
        }
    }
}

/// Why nothing goes out at the moment; it is tried again by itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hindrance {
    /// There was no answer.
    NoAnswer,
    /// Something else than the office answered: the page of a hotel's network, a proxy.
    NotTheOffice,
    /// The office asks to wait, or has a fault of its own.
    Busy,
    /// The office does not know this device's token.
    NoToken,
}

impl Hindrance {
    /// Every kind.
    pub const ALL: [Hindrance; 4] = [Hindrance::NoAnswer, Hindrance::NotTheOffice, Hindrance::Busy, Hindrance::NoToken];

    /// Its name in the keys of its words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Hindrance::NoAnswer => "no-answer",
            Hindrance::NotTheOffice => "not-the-office",
            Hindrance::Busy => "busy",
            Hindrance::NoToken => "no-token",
        }
    }
}
