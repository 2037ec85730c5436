//! The list of visits.

use axum::extract::{Query, State};
use axum::response::{IntoResponse as _, Redirect, Response};
use coilside_core::words::Words;
use maud::{Markup, html};
use serde::Deserialize;

use super::visitor::SignedIn;
use super::{Page, page};
use crate::app::day;
use crate::app::list_visits::{self, Question, Show, VisitList};
use crate::app::record::State as VisitState;
use crate::http::blocking::on_shelf;
use crate::office::Office;
use crate::store::listings::{Listing, Order};

/// The address's query, as text: what cannot be read counts as not said.
#[derive(Debug, Default, Deserialize)]
#[serde(default)]
pub(super) struct Asked {
    q: String,
    show: String,
    sort: String,
    dir: String,
    page: String,
}

const COLUMNS: [(Order, &str); 6] = [
    (Order::Date, "date"),
    (Order::Site, "site"),
    (Order::Technician, "technician"),
    (Order::State, "state"),
    (Order::Missing, "missing"),
    (Order::Waiting, "photographs"),
];

impl Asked {
    fn question(&self) -> Question {
        let order = COLUMNS.iter().find(|(_, name)| *name == self.sort).map_or(Order::Date, |(order, _)| *order);
        Question {
            search: self.q.chars().take(200).collect::<String>().trim().to_owned(),
            show: Show::parse(&self.show),
            order,
            rising: self.dir == "up",
            page: self.page.parse().unwrap_or(1),
        }
    }
}

pub(super) async fn to_visits() -> Response {
    Redirect::to("/visits").into_response()
}

pub(super) async fn list(
    State(office): State<Office>,
    SignedIn(visitor): SignedIn,
    Query(asked): Query<Asked>,
) -> Page {
    let question = asked.question();
    let list = {
        let question = question.clone();
        on_shelf(&office, move |store, library, _| list_visits::list(store, library, &question)).await?
    };
    let words = visitor.words();
    let body = html! {
        div.title { h1 { (words.text("office-visits")) } p.quiet { (words.fill("office-found", &[("n", &list.found.to_string())])) } }
        (filters(words, &question, &list))
        (search(words, &question))
        @if list.rows.is_empty() { (nothing(words, &question)) } @else { (table(words, &question, &list)) }
        (paging(words, &question, &list))
        (super::used::form(words))
    };
    Ok(page(&visitor, words, &words.text("office-visits"), body))
}

/// The address of the same list with something else asked.
fn address(question: &Question) -> String {
    let sort = COLUMNS.iter().find(|(order, _)| *order == question.order).map_or("date", |(_, name)| name);
    let mut pairs = Vec::new();
    if !question.search.is_empty() {
        pairs.push(format!("q={}", percent(&question.search)));
    }
    if question.show != Show::All {
        pairs.push(format!("show={}", question.show.name()));
    }
    if question.order != Order::Date || question.rising {
        pairs.push(format!("sort={sort}"));
        pairs.push(format!("dir={}", if question.rising { "up" } else { "down" }));
    }
    if question.page > 1 {
        pairs.push(format!("page={}", question.page));
    }
    if pairs.is_empty() { "/visits".into() } else { format!("/visits?{}", pairs.join("&")) }
}

/// Percent-encoding of everything but unreserved characters (RFC 3986, section 2.3).
pub(super) fn percent(text: &str) -> String {
    let keep = |byte: u8| byte.is_ascii_alphanumeric() || b"-._~".contains(&byte);
    text.bytes().map(|byte| if keep(byte) { char::from(byte).to_string() } else { format!("%{byte:02X}") }).collect()
}

fn filters(words: &Words, question: &Question, list: &VisitList) -> Markup {
    html! {
        nav.filters aria-label=(words.text("office-filters")) {
            @for (show, count) in &list.counts {
                @let current = *show == question.show;
                a.filter href=(address(&Question { show: *show, page: 1, ..question.clone() }))
                    aria-current=[current.then_some("true")] {
                    (show_name(words, *show)) " " b { (count) }
                }
            }
        }
    }
}

fn show_name(words: &Words, show: Show) -> String {
    match show {
        Show::All => words.text("office-show-all"),
        Show::Only(state) => words.text(&format!("office-state-{}", state.name())),
        Show::Trouble => words.text("office-show-trouble"),
        Show::Waiting => words.text("office-show-waiting"),
    }
}

fn search(words: &Words, question: &Question) -> Markup {
    html! {
        form.search role="search" action="/visits" method="get" {
            label for="q" { (words.text("office-search")) }
            input #q name="q" type="search" value=(question.search) autocomplete="off"
                aria-describedby="q-hint";
            @if question.show != Show::All { input type="hidden" name="show" value=(question.show.name()); }
            button { (words.text("office-search-do")) }
            @if !question.search.is_empty() {
                a href=(address(&Question { search: String::new(), page: 1, ..question.clone() })) {
                    (words.text("office-search-clear"))
                }
            }
            p.hint #q-hint { (words.text("office-search-hint")) }
        }
    }
}

fn nothing(words: &Words, question: &Question) -> Markup {
    let key = if question.search.is_empty() && question.show == Show::All { "office-none-yet" } else { "office-none" };
    html! { section.message { h2 { (words.text(key)) } p { (words.text(&format!("{key}.do"))) } } }
}

fn table(words: &Words, question: &Question, list: &VisitList) -> Markup {
    // Roles are said again: on a narrow page the rows are drawn as cards, and some readers then forget the table.
    html! {
        table.visits role="table" {
            caption.unseen { (words.text("office-visits")) }
            thead role="rowgroup" {
                tr role="row" {
                    @for (order, name) in COLUMNS { (column(words, question, order, name)) }
                }
            }
            tbody role="rowgroup" {
                @for row in &list.rows { (visit_row(words, row)) }
            }
        }
    }
}

fn column(words: &Words, question: &Question, order: Order, name: &str) -> Markup {
    let current = question.order == order;
    // A new column begins with what is looked for most: the newest, the most missing, the first of the alphabet.
    let rising = if current { !question.rising } else { matches!(order, Order::Site | Order::Technician) };
    let way = if question.rising { "ascending" } else { "descending" };
    html! {
        th role="columnheader" scope="col" class=(name) aria-sort=[current.then_some(way)] {
            a href=(address(&Question { order, rising, page: 1, ..question.clone() })) {
                (words.text(&format!("office-column-{name}")))
                @if current { span.way aria-hidden="true" { (if question.rising { " ↑" } else { " ↓" }) } }
            }
        }
    }
}

fn visit_row(words: &Words, row: &Listing) -> Markup {
    let label = |name: &str| words.text(&format!("office-column-{name}"));
    let site = if row.site.is_empty() { words.text("office-no-site") } else { row.site.clone() };
    html! {
        tr role="row" {
            td.date role="cell" { time { (day::stamp(row.opened_ms, row.offset_min)) } }
            td.site role="cell" {
                a href={ "/visits/" (row.visit) } { (site) }
                span.quiet { (row.units) @if !row.place.is_empty() { " · " (row.place) } }
            }
            td.technician role="cell" { span.label { (label("technician")) } (row.technician) }
            td.state role="cell" {
                (badge(words, &row.state))
                @if row.trouble { span.badge.danger { (words.text("office-look")) } }
            }
            td.number.missing role="cell" {
                span.label { (label("missing")) }
                @if row.missing == 0 { span.quiet { "0" } } @else { b { (row.missing) } }
            }
            td.number.photographs role="cell" {
                span.label { (label("photographs")) }
                @if row.waiting == 0 { (row.photos) } @else {
                    b { (words.fill("office-photos-of", &[
                        ("here", &row.photos.saturating_sub(row.waiting).to_string()),
                        ("all", &row.photos.to_string()),
                    ])) }
                }
            }
        }
    }
}

/// A visit's state: words and a drawing of its own, so that colour is not the only sign.
pub(super) fn badge(words: &Words, state: &str) -> Markup {
    let tone = match VisitState::parse(state) {
        Some(VisitState::Complete) => "good",
        Some(VisitState::Incomplete | VisitState::Unsigned) => "attention",
        Some(VisitState::BrokenOff) => "danger",
        Some(VisitState::InWork) | None => "plain",
    };
    html! { span class={ "badge " (tone) } { (words.text(&format!("office-state-{state}"))) } }
}

fn paging(words: &Words, question: &Question, list: &VisitList) -> Markup {
    let to = |page: u32| address(&Question { page, ..question.clone() });
    html! {
        @if list.pages > 1 {
            nav.paging aria-label=(words.text("office-pages")) {
                @if list.page > 1 { a rel="prev" href=(to(list.page - 1)) { "← " (words.text("office-page-before")) } }
                span { (words.fill("office-page-of", &[("page", &list.page.to_string()), ("pages", &list.pages.to_string())])) }
                @if list.page < list.pages { a rel="next" href=(to(list.page + 1)) { (words.text("office-page-next")) " →" } }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_typed_into_the_search_cannot_leave_its_place_in_an_address() {
        let question = Question { search: "a&show=x \"ñ".into(), ..Question::default() };
        assert_eq!(address(&question), "/visits?q=a%26show%3Dx%20%22%C3%B1");
    }

    #[test]
    fn what_cannot_be_read_in_an_address_counts_as_not_said() {
        let asked = Asked { sort: "'; drop".into(), page: "-3".into(), show: "?".into(), ..Asked::default() };
        assert_eq!(asked.question(), Question { page: 1, ..Question::default() });
    }
}
