//! Mistakes that are planted on purpose in the wrappers around engine, store and office: a world that finds none of them
//! would be worth nothing.

/// One planted mistake.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Mistake {
    /// A page of HTML with status 200 counts as safe.
    PageIsSafe,
    /// A photograph is called safe as soon as a piece of it was taken.
    PhotoSafeEarly,
    /// The office acknowledges events before they are on its disk.
    AnswerBeforeCommit,
    /// The office writes a photograph's row before its file and folder are on the disk.
    RowBeforeSync,
    /// The office gives a receipt for a photograph that has come and is not on the disk yet.
    ReceiptBeforeSync,
    /// `Retry-After` is forgotten.
    RetryAfterForgotten,
    /// The newest events go first, and the office takes them after a gap.
    GapTaken,
    /// The row of the outbox is deleted when its request goes out.
    RowGoneWhenSent,
    /// The office appends a batch again that it has already.
    BatchTwice,
    /// After a lost answer the phone believes that the whole piece arrived.
    OffsetBelieved,
    /// A late answer to a request that was given up moves the offset.
    LateAnswerMoves,
    /// A phone that is let in no more drops what waits.
    RevokedDrops,
    /// The cursor of the news is kept before their page.
    CursorFirst,
}

impl Mistake {
    /// All of them.
    pub(crate) const ALL: [Mistake; 13] = [
        Mistake::PageIsSafe,
        Mistake::PhotoSafeEarly,
        Mistake::AnswerBeforeCommit,
        Mistake::RowBeforeSync,
        Mistake::ReceiptBeforeSync,
        Mistake::RetryAfterForgotten,
        Mistake::GapTaken,
        Mistake::RowGoneWhenSent,
        Mistake::BatchTwice,
        Mistake::OffsetBelieved,
        Mistake::LateAnswerMoves,
        Mistake::RevokedDrops,
        Mistake::CursorFirst,
    ];
}
