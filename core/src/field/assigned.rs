//! What came down from the office enters the store.

use super::desk::Desk;
use super::{DoorError, Field};
use crate::round::{Assignment, News, Technician};
use crate::store::StoreError;

impl Field {
    /// Takes assignments, new ones and newer versions. Their personal data stays beside the log.
    ///
    /// # Errors
    /// Where the store cannot be written.
    pub fn assigned(&self, assignments: &[Assignment]) -> Result<(), DoorError> {
        Ok(self.desk().take_assignments(assignments)?)
    }

    /// Takes who works with this device, with their instruments.
    ///
    /// # Errors
    /// Where the store cannot be written.
    pub fn worked_by(&self, technician: &Technician) -> Result<(), DoorError> {
        Ok(self.desk().take_technician(technician)?)
    }

    /// Takes the device's charge, per cent; none while it charges or where it is not known. Not kept: it is asked anew.
    pub fn charged(&self, percent: Option<u8>) {
        self.desk().charge_percent = percent;
    }
}

impl Desk {
    /// Takes a page of news. The same page again changes nothing.
    pub(super) fn take_news(&mut self, news: &News) -> Result<(), StoreError> {
        self.take_assignments(&news.assignments)?;
        for id in &news.withdrawn {
            self.store.withdraw_assignment(id)?;
        }
        for review in &news.reviews {
            self.store.put_review(review)?;
        }
        for offer in news.packs.iter().filter(|offer| !self.procedures.has(&offer.digest)) {
            self.store.offer_pack(offer)?;
        }
        self.take_handed(&news.handed)?;
        news.technician.as_ref().map_or(Ok(()), |technician| self.take_technician(technician))
    }

    fn take_assignments(&mut self, assignments: &[Assignment]) -> Result<(), StoreError> {
        for assignment in assignments {
            let salt = self.salt();
            self.store.put_assignment(assignment, &salt)?;
        }
        Ok(())
    }

    fn take_technician(&mut self, technician: &Technician) -> Result<(), StoreError> {
        if self.technician != *technician {
            self.store.put_technician(technician)?;
            self.technician = technician.clone();
        }
        Ok(())
    }
}
