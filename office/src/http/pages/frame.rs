//! What surrounds every page of the office.

use coilside_core::words::Words;
use maud::{DOCTYPE, Markup, PreEscaped, html};

use super::files;
use super::visitor::Visitor;
use crate::app::language::Language;

/// Where everything begins.
const WAYS: [(&str, &str); 3] =
    [("/visits", "office-visits"), ("/round", "office-round"), ("/devices", "office-devices")];

/// The frame of an office page.
pub(super) struct Frame<'a> {
    pub(super) visitor: &'a Visitor,
    pub(super) words: &'a Words,
    pub(super) title: &'a str,
}

impl Frame<'_> {
    pub(super) fn around(&self, body: Markup) -> Markup {
        let (words, visitor) = (self.words, self.visitor);
        let text = |key: &str| words.text(key);
        html! {
            (DOCTYPE)
            html lang=(visitor.language.tag()) {
                (head(&format!("{} · Coilside", self.title)))
                body.office {
                    a.skip href="#main" { (text("office-skip")) }
                    header.top {
                        a.mark href="/visits" { (mark()) span { "Coilside" small { (text("office-office")) } } }
                        @if visitor.session.is_some() {
                            nav.ways aria-label=(text("office-ways")) {
                                @for (path, key) in WAYS {
                                    a href=(path) aria-current=[visitor.path.starts_with(path).then_some("page")] { (text(key)) }
                                }
                            }
                        }
                        nav.tools aria-label=(text("office-tools")) {
                            (languages(visitor))
                            @if visitor.session.is_some() {
                                form action="/leave" method="post" { button.quiet { (text("office-leave")) } }
                            }
                        }
                    }
                    main #main { (body) }
                }
            }
        }
    }
}

/// The head of any page.
pub(super) fn head(title: &str) -> Markup {
    html! {
        head {
            meta charset="utf-8";
            meta name="viewport" content="width=device-width, initial-scale=1";
            meta name="robots" content="noindex, nofollow";
            meta name="color-scheme" content="light dark";
            title { (title) }
            link rel="icon" href="/icon.svg" type="image/svg+xml";
            link rel="stylesheet" href=(files::style_address());
        }
    }
}

/// The other languages of this page.
pub(super) fn languages(visitor: &Visitor) -> Markup {
    html! {
        @for language in Language::ALL.into_iter().filter(|language| *language != visitor.language) {
            a.language href=(visitor.in_language(language)) lang=(language.tag()) hreflang=(language.tag()) {
                (language.name())
            }
        }
    }
}

/// The mark: a coil, seen from the side.
pub(super) fn mark() -> Markup {
    PreEscaped(files::MARK.to_owned())
}
