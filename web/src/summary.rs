//! The owner's summary on the spot: a page of its own and a PDF, at addresses that only this process's page is told. The
//! browser shows, prints and keeps them.

use axum::{
    extract::{Path, State},
    http::{HeaderValue, header},
    response::{IntoResponse, Response},
};
use coilside_core::{
    field::Handover,
    record::summary::policy,
    screen::{Block, Turn},
};

use crate::{address::Token, door::Shell, problem::Problem};

/// What the core's links to a summary say.
const PAGE: &str = "summary.html";
const PAPER: &str = "summary.pdf";

fn is_file(name: &str) -> bool {
    name == PAGE || name == PAPER && cfg!(feature = "pdf")
}

/// Where summaries are shown.
pub(crate) struct Summaries {
    /// The office's address, for the way to its own copy.
    office: Option<String>,
    /// The secret in the addresses; new at every start.
    secret: Token,
}

impl Summaries {
    pub(crate) const fn of(office: Option<String>, secret: Token) -> Self {
        Self { office, secret }
    }

    /// The screen with its links to a summary as addresses here.
    pub(crate) fn addressed(&self, mut turn: Turn) -> Turn {
        turn.screen.blocks.retain(|block| !matches!(block, Block::Link { to, .. } if to == PAPER && !is_file(to)));
        for block in &mut turn.screen.blocks {
            if let Block::Link { to, .. } = block
                && is_file(to)
            {
                *to = format!("/summary/{}/{to}", self.secret.text());
            }
        }
        turn
    }
}

/// The summary of the visit that is open, as a page or as a PDF.
pub(crate) async fn file(
    State(shell): State<Shell>,
    Path((secret, name)): Path<(String, String)>,
) -> Result<Response, Problem> {
    if !shell.summaries().secret.is(secret.as_bytes()) || !is_file(&name) {
        return Err(Problem::unknown());
    }
    let office = shell.summaries().office.clone();
    let handed = shell.ask(move |core, _| core.handover(office.as_deref())).await?;
    if name == PAGE {
        let policy = format!("{}; frame-ancestors 'none'", policy());
        let policy = HeaderValue::try_from(policy).map_err(|why| Problem::inside(why.to_string()))?;
        let headers = [
            (header::CONTENT_TYPE, HeaderValue::from_static("text/html; charset=utf-8")),
            (header::CONTENT_SECURITY_POLICY, policy),
        ];
        return Ok((headers, handed.page()).into_response());
    }
    paper(&handed)
}

#[cfg(feature = "pdf")]
fn paper(handed: &Handover) -> Result<Response, Problem> {
    let paper = handed.paper().map_err(|why| Problem::inside(why.to_string()))?;
    let headers =
        [(header::CONTENT_TYPE, "application/pdf"), (header::CONTENT_DISPOSITION, "inline; filename=\"summary.pdf\"")];
    Ok((headers, paper).into_response())
}

#[cfg(not(feature = "pdf"))]
fn paper(_: &Handover) -> Result<Response, Problem> {
    Err(Problem::unknown())
}

#[cfg(test)]
mod tests {
    use axum::http::{Method, StatusCode};

    use crate::stub::{Caller, SUMMARY};

    #[tokio::test]
    async fn a_summary_is_shown_only_at_its_secret_address() {
        let caller = Caller::new();
        let guessed = caller.bare(Method::GET, "/summary/c0c1c2c3c4c5c6c8/summary.html").await;
        assert_eq!(guessed.status, StatusCode::NOT_FOUND);
        let other = caller.bare(Method::GET, &format!("/summary/{SUMMARY}/device-key.pem")).await;
        assert_eq!(other.status, StatusCode::NOT_FOUND);
    }
}
