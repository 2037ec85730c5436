//! Outcomes at the door that are no photographs: the place, the signature, and that the device counts time anew.

use super::DoorError;
use super::chain::chain;
use super::desk::{Desk, Seat};
use crate::effect::{Outcome, Request};
use crate::now::Now;
use crate::record::seal;
use crate::screen::Turn;
use crate::store::{Commit, Sealed, StoreError};
use crate::visit::decide::lapses;
use crate::visit::event::Body;
use crate::visit::state::Mark;

impl Desk {
    /// Waiting times that run since before the device counted time anew: from this moment on it is proven again.
    pub(super) fn witness(&mut self, now: &Now) -> Result<(), DoorError> {
        for row in self.store.visits(0)?.into_iter().filter(|row| !row.elsewhere) {
            let seat = self.seat_for(&row.visit)?;
            let marks = || seat.visit.runs.values().flat_map(|run| run.steps.values());
            let anew =
                marks().any(|mark| matches!(mark, Mark::Running { seen, .. } if seen.mono_epoch != now.mono_epoch));
            if anew && seat.visit.sealing.is_none() {
                match self.write(seat, vec![Body::DeviceRestarted {}], None, now) {
                    // Without room it is not written yet: then no time is proven, which is the safe side.
                    Ok(()) | Err(DoorError::Store(StoreError::Full)) => {}
                    Err(error) => return Err(error),
                }
            }
        }
        Ok(())
    }

    /// An outcome that is no photograph.
    pub(super) fn ended(&mut self, effect_id: &str, outcome: &Outcome, now: &Now) -> Result<Turn, DoorError> {
        let effect = self
            .store
            .effect(effect_id)?
            .ok_or_else(|| DoorError::NoSuch { what: "request", name: effect_id.to_owned() })?;
        if effect.outcome.is_some() {
            return self.turn(Vec::new(), now);
        }
        let seat = self.seat_for(&effect.visit)?;
        let ended = Some((effect_id.to_owned(), outcome));
        match outcome {
            Outcome::Place { place } if !seat.sealed && seat.visit.sealing.is_none() => {
                let fixed = Body::PlaceFixed {
                    latitude: format!("{:.6}", place.latitude_deg),
                    longitude: format!("{:.6}", place.longitude_deg),
                    accuracy_m: format!("{:.0}", place.accuracy_m),
                    age_ms: place.age_ms.clamp(0, 1 << 52),
                };
                self.write(seat, vec![fixed], ended, now)?;
            }
            Outcome::Failed { why }
                if effect.request == Request::Locate && !seat.sealed && seat.visit.sealing.is_none() =>
            {
                let why = why.chars().take(200).collect();
                self.write(seat, vec![Body::PlaceMissing { why }], ended, now)?;
            }
            Outcome::Signature { base64 } if !seat.sealed || self.is_unsigned(&seat.visit)? => {
                self.signed(seat, base64, effect_id, outcome, now)?
            }
            _ => {
                self.store.commit(&Commit { ended, utc_ms: now.utc_ms, ..Commit::default() })?;
            }
        }
        self.turn(Vec::new(), now)
    }

    fn signed(
        &mut self,
        seat: Seat,
        base64: &str,
        effect_id: &str,
        outcome: &Outcome,
        now: &Now,
    ) -> Result<(), DoorError> {
        // None where the seal was cancelled in between.
        let input = seat.visit.sealing.is_some().then(|| seal::signing_input(&seat.visit)).transpose()?;
        let asked = |input: &String| Request::SignBytes { bytes_base64: super::send::base64(input.as_bytes()) };
        let request = self.store.effect(effect_id)?.map(|effect| effect.request);
        let Some(input) = input.filter(|input| request == Some(asked(input))) else {
            // Signed over a state that is no more: work went on in between, and a new signature is asked for.
            self.store.commit(&Commit {
                ended: Some((effect_id.to_owned(), outcome)),
                utc_ms: now.utc_ms,
                ..Commit::default()
            })?;
            return Ok(());
        };
        let jws = seal::close(&input, base64, &self.public_key)?;
        self.store.commit(&Commit {
            ended: Some((effect_id.to_owned(), outcome)),
            seal: Some(Sealed {
                visit: &seat.visit.id,
                jws: &jws,
                addenda_to: seat.sealed.then_some(seat.visit.end.next),
            }),
            settings: vec![("place".to_owned(), "leaving".to_owned())],
            utc_ms: now.utc_ms,
            ..Commit::default()
        })?;
        if self.visit_id().as_ref() == Some(&seat.visit.id) {
            self.place = "leaving".to_owned();
            self.seat = Some(Seat { sealed: true, ..seat });
        }
        Ok(())
    }

    /// Writes events that no decision is needed for, with the effect that they end.
    pub(super) fn write(
        &mut self,
        seat: Seat,
        bodies: Vec<Body>,
        ended: Option<(String, &Outcome)>,
        now: &Now,
    ) -> Result<(), DoorError> {
        let bodies = lapses(&seat.visit, now).into_iter().chain(bodies).collect();
        let (state, events) = chain(seat.visit.clone(), bodies, now)?;
        self.store.commit(&Commit { visit: Some(&state), events, ended, utc_ms: now.utc_ms, ..Commit::default() })?;
        self.keep(Seat { visit: state, ..seat });
        Ok(())
    }
}
