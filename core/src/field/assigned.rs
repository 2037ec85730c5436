//! What came down from the office enters the store.

use super::{DoorError, Field};
use crate::round::{Assignment, Technician};

impl Field {
    /// Takes assignments, new ones and newer versions. Their personal data stays beside the log.
    ///
    /// # Errors
    /// Where the store cannot be written.
    pub fn assigned(&self, assignments: &[Assignment]) -> Result<(), DoorError> {
        let mut desk = self.desk();
        for assignment in assignments {
            let salt = desk.salt();
            desk.store.put_assignment(assignment, &salt)?;
        }
        Ok(())
    }

    /// Takes who works with this device, with their instruments.
    ///
    /// # Errors
    /// Where the store cannot be written.
    pub fn worked_by(&self, technician: &Technician) -> Result<(), DoorError> {
        let mut desk = self.desk();
        if desk.technician != *technician {
            desk.store.put_technician(technician)?;
            desk.technician = technician.clone();
        }
        Ok(())
    }

    /// Takes the device's charge, per cent; none while it charges or where it is not known. Not kept: it is asked anew.
    pub fn charged(&self, percent: Option<u8>) {
        self.desk().charge_percent = percent;
    }
}
