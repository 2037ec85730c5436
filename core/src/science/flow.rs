//! Water flow, by bucket and stopwatch or by a meter, with its doubt.
//!
//! ```text
//! bucket: V' = V / t         u(t)² = 2 (reaction limit)² / 3, for starting and stopping; u(V) rectangular
//! meter: limits ± (percent of the reading + digits · step), rectangular        over a period: V' = (end − start) / t
//! ```
//! **A bucket cannot measure a closed loop**: opening it to fill the bucket changes the flow that was to be measured. So a bucket
//! gives an [`OpenFlow`], of which only [`heat::once_through_w`](super::heat::once_through_w) makes heat, and nothing makes a [`LoopFlow`] of it.
//!
//! Range: bucket 0.1…1000 l in 1…3600 s; flow 0.1…1000 l/min; period 1 s…1 year.
//! Accuracy: that of the readings. A stopwatch's own error (below 0.01 %) is left out. Reaction limit 0.2 s: common practice, no source.
//! Source: JCGM 100:2008 (GUM), 4.3.7 (rectangular) and 5.1.2 (propagation).

use super::error::{ScienceError, within};
use super::instrument::{Instrument, Stated};
use super::uncertainty::{Cause, Doubted, from_limits};

const S_OF_MIN: f64 = 60.0;
const FLOW_LEAST_L_MIN: f64 = 0.1;
const FLOW_MOST_L_MIN: f64 = 1000.0;
const YEAR_S: f64 = 366.0 * 86_400.0;

/// Flow in l/min out of an open outlet, into a bucket.
#[derive(Debug, Clone, PartialEq)]
pub struct OpenFlow(Doubted);

/// Flow in l/min through a meter that stays in its pipe, at the inlet.
#[derive(Debug, Clone, PartialEq)]
pub struct LoopFlow(Doubted);

impl OpenFlow {
    /// In l/min.
    pub fn l_min(&self) -> &Doubted {
        &self.0
    }
}

impl LoopFlow {
    /// What a meter shows, in l/min (0.1…1000).
    pub fn metered(flow_l_min: Doubted) -> Result<Self, ScienceError> {
        Ok(Self(checked(flow_l_min)?))
    }

    /// In l/min.
    pub fn l_min(&self) -> &Doubted {
        &self.0
    }
}

fn checked(flow_l_min: Doubted) -> Result<Doubted, ScienceError> {
    within("flow_l_min", flow_l_min.value(), FLOW_LEAST_L_MIN, FLOW_MOST_L_MIN)?;
    Ok(flow_l_min)
}

/// One filling of a bucket, timed by hand.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bucket {
    /// Volume filled, l.
    pub volume_l: f64,
    /// It lies within ± this, l: the bucket's marks and how they were read.
    pub volume_limit_l: f64,
    /// Time taken, s.
    pub time_s: f64,
    /// Starting and stopping the watch each lie within ± this, s; 0.2 is usual.
    pub reaction_limit_s: f64,
}

impl Bucket {
    /// The flow out of the open outlet. `bucket` names the bucket and `filling` this filling of it: the volume's error is the same each
    /// time one bucket is filled to one mark, the hand on the watch is not.
    pub fn flow(&self, bucket: &str, filling: &str) -> Result<OpenFlow, ScienceError> {
        within("volume_l", self.volume_l, 0.1, 1000.0)?;
        within("volume_limit_l", self.volume_limit_l, 0.0, self.volume_l / 2.0)?;
        within("time_s", self.time_s, 1.0, 3600.0)?;
        within("reaction_limit_s", self.reaction_limit_s, 0.0, self.time_s / 2.0)?;
        let volume = Doubted::new("volume_l", self.volume_l)?.because(
            "volume_limit_l",
            Cause::new(format!("{bucket}, volume")),
            from_limits(self.volume_limit_l)?,
        )?;
        let one_press = from_limits(self.reaction_limit_s)?;
        let time = Doubted::new("time_s", self.time_s / S_OF_MIN)?
            .because("reaction_limit_s", Cause::new(format!("{filling}, start")), one_press / S_OF_MIN)?
            .because("reaction_limit_s", Cause::new(format!("{filling}, stop")), one_press / S_OF_MIN)?;
        Ok(OpenFlow(checked(volume.over(&time))?))
    }
}

/// How a meter's sheet states its error.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MeterError {
    /// Percent of the reading, 0…50.
    pub percent_of_reading: f64,
    /// Further steps of the last digit, 0…1000.
    pub digits: f64,
    /// One step of the last digit, in the reading's unit.
    pub step: f64,
}

impl MeterError {
    /// A reading by this meter, as [`Instrument::reads`] takes it.
    pub fn stated(&self, value: f64) -> Result<Stated, ScienceError> {
        within("percent_of_reading", self.percent_of_reading, 0.0, 50.0)?;
        within("digits", self.digits, 0.0, 1000.0)?;
        within("step", self.step, 0.0, 1e6)?;
        let error_limit = libm::fabs(value) * self.percent_of_reading / 100.0 + self.digits * self.step;
        Ok(Stated { value, error_limit, step: self.step, scatter_u: 0.0 })
    }
}

/// A counter read twice: a water meter, a heat meter, an electricity meter.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Counted {
    /// At the start, in the counter's unit.
    pub start: f64,
    /// At the end; not below the start.
    pub end: f64,
    /// What lies between, s.
    pub time_s: f64,
    /// The time lies within ± this, s.
    pub time_limit_s: f64,
    /// Percent of what it counts, 0…50: the error that lets it run fast or slow.
    pub percent_of_count: f64,
    /// The smallest step that can be read, in the counter's unit.
    pub step: f64,
}

impl Counted {
    /// What was counted in each second, in the counter's unit. `period` names what is this period's own.
    pub fn each_second(&self, counter: &Instrument, period: &str) -> Result<Doubted, ScienceError> {
        within("start", self.start, 0.0, 1e12)?;
        within("end", self.end, self.start, 1e12)?;
        within("time_s", self.time_s, 1.0, YEAR_S)?;
        within("time_limit_s", self.time_limit_s, 0.0, self.time_s / 2.0)?;
        within("percent_of_count", self.percent_of_count, 0.0, 50.0)?;
        let value = self.end - self.start;
        let error_limit = value * self.percent_of_count / 100.0;
        let unread = Stated { value: 0.0, error_limit: 0.0, step: self.step, scatter_u: 0.0 };
        // Both readings of the counter are rounded, each by itself.
        let counted = counter
            .reads(&format!("{period}, end"), Stated { value, error_limit, ..unread })?
            .less(&counter.reads(&format!("{period}, start"), unread)?);
        let clock = Cause::new(format!("{period}, time"));
        let time =
            Doubted::new("time_s", self.time_s)?.because("time_limit_s", clock, from_limits(self.time_limit_s)?)?;
        Ok(counted.over(&time))
    }

    /// The flow through a water meter that counts litres.
    pub fn litres(&self, counter: &Instrument, period: &str) -> Result<LoopFlow, ScienceError> {
        LoopFlow::metered(self.each_second(counter, period)?.scaled(S_OF_MIN))
    }

    /// The mean power in watt of a meter that counts kilowatt-hours, of heat or of electricity.
    pub fn kilowatt_hours(&self, counter: &Instrument, period: &str) -> Result<Doubted, ScienceError> {
        let power_w = self.each_second(counter, period)?.scaled(3.6e6);
        within("mean power_w", power_w.value(), 0.0, 1e6)?;
        Ok(power_w)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const BUCKET: Bucket = Bucket { volume_l: 10.0, volume_limit_l: 0.2, time_s: 60.0, reaction_limit_s: 0.2 };

    #[test]
    fn a_bucket_of_ten_litres_in_a_minute_is_known_to_little_more_than_its_marks() {
        let flow = BUCKET.flow("bucket", "filling").unwrap();
        let by_hand = 10.0 * libm::sqrt((0.02_f64 * 0.02 + 2.0 * (0.2 / 60.0) * (0.2 / 60.0)) / 3.0);
        assert!((flow.l_min().value() - 10.0).abs() < 1e-12 && (flow.l_min().standard_u() - by_hand).abs() < 1e-12);
    }

    #[test]
    fn the_same_bucket_twice_leaves_only_the_hand_on_the_watch() {
        let [found, left] = ["found", "left"].map(|filling| BUCKET.flow("bucket", filling).unwrap());
        let difference = left.l_min().less(found.l_min()).standard_u();
        assert!((difference - 10.0 * 0.2 / 60.0 * libm::sqrt(4.0 / 3.0)).abs() < 1e-12);
    }

    #[test]
    fn a_meters_percent_and_digits_add() {
        let stated = MeterError { percent_of_reading: 2.0, digits: 3.0, step: 0.1 }.stated(10.0).unwrap();
        assert!((stated.error_limit - 0.5).abs() < 1e-12);
    }

    #[test]
    fn a_counter_that_ran_backwards_is_refused_by_name() {
        let counted =
            Counted { start: 10.0, end: 9.0, time_s: 60.0, time_limit_s: 0.0, percent_of_count: 0.0, step: 0.1 };
        let refused = counted.litres(&Instrument::named("W-1"), "found").unwrap_err();
        assert!(matches!(refused, ScienceError::OutOfRange { argument, .. } if argument == "end"));
    }
}
