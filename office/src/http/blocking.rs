//! Disk and database block; the server's own threads must not.

use super::refusal::Refusal;
use crate::app::library::Library;
use crate::office::Office;
use crate::store::Store;

/// Does a use case on a thread that may wait for the disk. `work` gets the store and the time.
pub(super) async fn on_disk<T, E>(
    office: &Office,
    work: impl FnOnce(&Store, i64) -> Result<T, E> + Send + 'static,
) -> Result<T, Refusal>
where
    T: Send + 'static,
    E: Into<Refusal> + Send + 'static,
{
    let office = office.clone();
    let done = tokio::task::spawn_blocking(move || work(&office.store, office.now_ms())).await;
    done.map_err(|_| Refusal::broken())?.map_err(Into::into)
}

/// The same for what is shown: `work` also gets the procedures and words.
pub(super) async fn on_shelf<T, E>(
    office: &Office,
    work: impl FnOnce(&Store, &Library, i64) -> Result<T, E> + Send + 'static,
) -> Result<T, Refusal>
where
    T: Send + 'static,
    E: Into<Refusal> + Send + 'static,
{
    let library = office.library.clone();
    on_disk(office, move |store, now_ms| work(store, &library, now_ms)).await
}
