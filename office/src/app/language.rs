//! The languages of the pages.

/// One that the pages speak.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Language {
    #[default]
    English,
    Spanish,
}

impl Language {
    pub(crate) const ALL: [Language; 2] = [Language::English, Language::Spanish];

    /// The BCP 47 tag.
    pub(crate) const fn tag(self) -> &'static str {
        match self {
            Language::English => "en",
            Language::Spanish => "es",
        }
    }

    /// Its own name for itself.
    pub(crate) const fn name(self) -> &'static str {
        match self {
            Language::English => "English",
            Language::Spanish => "Español",
        }
    }

    /// Reads a tag; what follows a hyphen does not matter.
    pub(crate) fn parse(tag: &str) -> Option<Self> {
        let primary = tag.split('-').next().unwrap_or_default().trim();
        Self::ALL.into_iter().find(|language| language.tag().eq_ignore_ascii_case(primary))
    }

    /// The first language of an `Accept-Language` header that the pages speak. Weights are taken to fall from left to
    /// right, as browsers send them.
    pub(crate) fn of_header(header: &str) -> Option<Self> {
        header.split(',').find_map(|part| Self::parse(part.split(';').next().unwrap_or_default()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_language_that_we_speak_is_taken() {
        assert_eq!(Language::of_header("ca-ES,es-ES;q=0.8,en;q=0.5"), Some(Language::Spanish));
        assert_eq!(Language::of_header("en-GB"), Some(Language::English));
        assert_eq!(Language::of_header("*"), None);
    }
}
