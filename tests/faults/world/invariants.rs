//! What must hold at every step of a world, and at its end.

use std::collections::{BTreeMap, BTreeSet};

use coilside_core::store::OutboxKind;
use coilside_core::sync::{Link, SendRequest};

use super::parts::{Bytes, OfficeDisk, PhoneDisk, Reply, State};

/// What is broken, in words.
pub(crate) type Broken = String;

/// The engine gives a request up after this time; until then it is out.
const PATIENCE_MS: i64 = 90_000;

/// What a phone says is safe is on the office's disk; the office has nothing that the phone has not; nothing that the phone
/// wrote down is without its row.
pub(crate) fn disks(phone: &PhoneDisk, office: &OfficeDisk) -> Result<(), Broken> {
    for (visit, log) in &phone.logs {
        let there = office.logs.get(visit).map_or(&[][..], Vec::as_slice);
        if !log.starts_with(there) {
            return Err(format!(
                "{visit}: the office's {} events are no beginning of the phone's {}",
                there.len(),
                log.len()
            ));
        }
        let mut next = 0;
        for row in phone.rows.iter().filter(|row| row.is(OutboxKind::Events, visit)) {
            let end = row.row.first + row.row.count;
            if row.row.first != next {
                return Err(format!("{visit}: the outbox goes on with event {} after {next}", row.row.first));
            }
            next = end;
            if row.state == State::Safe && (there.len() as u64) < end {
                return Err(format!(
                    "{visit}: events before {end} are called safe, the office's disk has {}",
                    there.len()
                ));
            }
        }
        if next != log.len() as u64 {
            return Err(format!("{visit}: {} events, the outbox knows of {next}", log.len()));
        }
    }
    for (visit, jws) in &phone.seals {
        let row = phone.rows.iter().find(|row| row.is(OutboxKind::Seal, visit));
        let row = row.ok_or_else(|| format!("{visit}: the seal has no row"))?;
        if row.state == State::Safe && office.seals.get(visit) != Some(jws) {
            return Err(format!("{visit}: the seal is called safe and is not on the office's disk"));
        }
    }
    for digest in phone.photos.keys() {
        let row = phone.rows.iter().find(|row| row.row.kind == OutboxKind::Photo && row.row.digest.as_str() == digest);
        let row = row.ok_or_else(|| format!("photograph {digest} has no row"))?;
        if row.state == State::Safe && office.photos.get(digest) != Some(&true) {
            return Err(format!("photograph {digest} is called safe and is not whole on the office's disk"));
        }
    }
    Ok(())
}

/// Whether nothing waits any more and all news came.
pub(crate) fn at_rest(phone: &PhoneDisk, office: &OfficeDisk) -> bool {
    phone.rows.iter().all(|row| row.state == State::Safe) && phone.withdrawn == office.withdrawn
}

/// At rest both sides are equal to the byte, and nobody has anything else.
pub(crate) fn equal<'a>(phones: impl Iterator<Item = &'a PhoneDisk>, office: &OfficeDisk) -> Result<(), Broken> {
    let (mut logs, mut seals, mut photos) = (BTreeMap::new(), BTreeMap::new(), BTreeMap::new());
    for phone in phones {
        logs.extend(phone.logs.clone());
        seals.extend(phone.seals.clone());
        photos.extend(phone.photos.keys().map(|digest| (digest.clone(), true)));
    }
    if logs != office.logs {
        return Err("at rest the events of phones and office differ".to_owned());
    }
    if seals != office.seals {
        return Err("at rest the seals of phones and office differ".to_owned());
    }
    if photos != office.photos {
        return Err(format!("at rest the photographs differ: {photos:?}, {:?}", office.photos));
    }
    Ok(())
}

/// What one phone's log had when it was last looked at: it only grows, and has what was acknowledged to the person once.
#[derive(Default)]
pub(crate) struct Ledger {
    seen: BTreeMap<String, Vec<Bytes>>,
    /// What the person was told is written down.
    pub(crate) acknowledged: Vec<String>,
}

impl Ledger {
    pub(crate) fn look(&mut self, phone: &PhoneDisk) -> Result<(), Broken> {
        for (visit, before) in &self.seen {
            let now = phone.logs.get(visit).map_or(&[][..], Vec::as_slice);
            if now.len() < before.len() || now.last().is_some() && now[before.len() - 1] != before[before.len() - 1] {
                return Err(format!("{visit}: what was written down is not there any more"));
            }
        }
        for (visit, log) in &phone.logs {
            if self.seen.get(visit).is_none_or(|before| before.len() != log.len()) {
                self.seen.insert(visit.clone(), log.clone());
            }
        }
        Ok(())
    }

    /// Each text that was acknowledged stands in the logs once.
    pub(crate) fn close(&self, phone: &PhoneDisk) -> Result<(), Broken> {
        for text in &self.acknowledged {
            let wanted = format!("\"{text}\"");
            let has = |event: &&Bytes| String::from_utf8_lossy(event).contains(&wanted);
            let found = phone.logs.values().flatten().filter(has).count();
            if found != 1 {
                return Err(format!("'{text}' was acknowledged to the person and stands {found} times in the log"));
            }
        }
        Ok(())
    }
}

/// What a shell sees of the engine since it started: requests that are out, what the office asked and told.
#[derive(Default)]
pub(crate) struct Watch {
    /// The small request and the photograph's that are out.
    out: [Option<(String, i64)>; 2],
    /// The office asked for quiet until then.
    quiet_until_ms: [i64; 2],
    /// Offsets that were told, by row.
    told: BTreeMap<String, BTreeSet<u64>>,
    link: Option<Link>,
}

fn lane(id: &str) -> usize {
    usize::from(id.starts_with("photo:"))
}

impl Watch {
    /// Another network, or a person who wants it now: rests end.
    pub(crate) fn rests_end(&mut self) {
        self.quiet_until_ms = [0, 0];
    }

    pub(crate) fn network(&mut self, link: Link) {
        if self.link.replace(link) != Some(link) && link != Link::None {
            self.rests_end();
        }
    }

    /// A person wants to join: what is small and out is not waited for.
    pub(crate) fn joins(&mut self) {
        self.out[0] = None;
    }

    pub(crate) fn goes_out(&mut self, request: &SendRequest, now_ms: i64) -> Result<(), Broken> {
        let (id, lane) = (request.id.as_str(), lane(&request.id));
        if let Some((other, since)) = &self.out[lane]
            && now_ms - since < PATIENCE_MS
        {
            return Err(format!("{id} goes out while {other} is"));
        }
        let quiet_ms =
            if lane == 1 { self.quiet_until_ms[0].max(self.quiet_until_ms[1]) } else { self.quiet_until_ms[0] };
        if now_ms < quiet_ms && !id.starts_with("join/") {
            return Err(format!("{id} goes out {} ms before the office wants to hear again", quiet_ms - now_ms));
        }
        if let Some((row, stage)) = id.strip_prefix("photo:").and_then(|rest| rest.split_once(':'))
            && let Ok(offset) = stage.split('/').next().unwrap_or_default().parse::<u64>()
            && !self.told.get(row).is_some_and(|told| told.contains(&offset))
        {
            return Err(format!("{id} begins at byte {offset}, which nobody told it"));
        }
        self.out[lane] = Some((id.to_owned(), now_ms));
        Ok(())
    }

    pub(crate) fn comes_back(&mut self, id: &str, reply: &Reply, now_ms: i64) {
        let lane = lane(id);
        let awaited = self.out[lane].as_ref().is_some_and(|(out, since)| out == id && now_ms - since < PATIENCE_MS);
        if self.out[lane].as_ref().is_some_and(|(out, _)| out == id) {
            self.out[lane] = None;
        }
        let later = matches!(reply.status, 0 | 408 | 425 | 429 | 500..);
        if !later || id.starts_with("join/") {
            self.quiet_until_ms[0] = 0;
            if lane == 1 || id.starts_with("join/") {
                self.quiet_until_ms[1] = 0;
            }
        }
        let asks = !id.starts_with("join/") && !id.starts_with("news/");
        let after_s = reply.header("retry-after").and_then(|text| text.parse::<i64>().ok());
        if let (true, true, 429 | 503, Some(after_s)) = (awaited, asks, reply.status, after_s) {
            self.quiet_until_ms[lane] = now_ms + after_s.min(3_600) * 1_000;
        }
        if let Some((row, _)) = id.strip_prefix("photo:").and_then(|rest| rest.split_once(':'))
            && let Some(offset) = reply.header("upload-offset").and_then(|text| text.parse().ok())
            && (200..300).contains(&reply.status)
        {
            self.told.entry(row.to_owned()).or_default().insert(offset);
        }
    }
}
