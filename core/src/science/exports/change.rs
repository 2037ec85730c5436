//! What the work changed, from the readings as found and as left.

use super::heat::HeatTestValues;
use super::performance::ConditionReadings;
use super::reading::{DoubtedValue, ReadingValue};
use crate::science::ScienceError;
use crate::science::change::{self, Better, Change, Tested, WorkChange};
use crate::science::exchanger::{self, EndsRead};
use crate::science::flow::LoopFlow;
use crate::science::heat::{cop, heat_w};
use crate::science::performance::Kind;
use crate::science::uncertainty::Doubted;
use crate::science::year::{hot_water_kwh, year};

/// A heat test by instruments that may be the same as those of another.
#[derive(Debug, Clone, uniffi::Record)]
pub struct HeatReadings {
    /// Water flow at the inlet, l/min.
    pub flow_l_min: ReadingValue,
    /// Water in, °C.
    pub inlet_c: ReadingValue,
    /// Water out, °C.
    pub outlet_c: ReadingValue,
    /// Electric power, W.
    pub power_w: ReadingValue,
}

struct Heat {
    inlet_c: Doubted,
    outlet_c: Doubted,
    heat_w: Doubted,
    cop: Doubted,
}

impl HeatReadings {
    fn heat(&self, at: &str) -> Result<Heat, ScienceError> {
        let flow = LoopFlow::metered(self.flow_l_min.doubted(&format!("{at} flow_l_min"))?)?;
        let inlet_c = self.inlet_c.doubted(&format!("{at} inlet_c"))?;
        let outlet_c = self.outlet_c.doubted(&format!("{at} outlet_c"))?;
        let power = self.power_w.doubted(&format!("{at} power_w"))?;
        let heat_w = heat_w(&flow, &inlet_c, &outlet_c)?;
        let cop = cop(&heat_w, &power)?;
        Ok(Heat { inlet_c, outlet_c, heat_w, cop })
    }
}

/// [`heat_w`] and COP, by instruments.
#[uniffi::export]
pub fn heat_by_instruments(readings: HeatReadings) -> Result<HeatTestValues, ScienceError> {
    let heat = readings.heat("once")?;
    Ok(HeatTestValues {
        heat_w: heat.heat_w.value(),
        heat_u: heat.heat_w.standard_u(),
        cop: heat.cop.value(),
        cop_u: heat.cop.standard_u(),
    })
}

/// A change, at like conditions.
#[derive(Debug, Clone, uniffi::Record)]
pub struct ChangeValues {
    /// As found, at the conditions as left.
    pub found: DoubtedValue,
    /// As left.
    pub left: DoubtedValue,
    /// Left less found.
    pub difference: DoubtedValue,
    /// "better", "worse" or "no difference that can be told".
    pub verdict: String,
}

impl From<&Change> for ChangeValues {
    fn from(change: &Change) -> Self {
        Self {
            found: (&change.found).into(),
            left: (&change.left).into(),
            difference: (&change.difference).into(),
            verdict: change.verdict.as_str().to_owned(),
        }
    }
}

/// [`Change::between`] two readings.
#[uniffi::export]
pub fn reading_change(
    found: ReadingValue,
    left: ReadingValue,
    higher_is_better: bool,
) -> Result<ChangeValues, ScienceError> {
    let better = if higher_is_better { Better::Higher } else { Better::Lower };
    Ok((&Change::between(&found.doubted("as found")?, &left.doubted("as left")?, better)?).into())
}

/// A heat test and the conditions that it ran at.
#[derive(Debug, Clone, uniffi::Record)]
pub struct TestAtConditions {
    /// The test.
    pub test: HeatReadings,
    /// Its conditions; the water's two temperatures are those of the test.
    pub conditions: ConditionReadings,
}

impl TestAtConditions {
    fn tested(&self, at: &str) -> Result<Tested, ScienceError> {
        let Heat { heat_w, cop, .. } = self.test.heat(at)?;
        Ok(Tested { heat_w, cop, conditions: self.conditions.conditions(at)? })
    }
}

fn work(kind: &str, found: &TestAtConditions, left: &TestAtConditions) -> Result<WorkChange, ScienceError> {
    change::work(Kind::named(kind)?, &found.tested("as found")?, &left.tested("as left")?)
}

/// What the work changed in heat and COP.
#[derive(Debug, Clone, uniffi::Record)]
pub struct WorkValues {
    /// Heat given to the water, W; none for variable speed.
    pub heat_w: Option<ChangeValues>,
    /// Coefficient of performance.
    pub cop: ChangeValues,
}

/// [`change::work`].
#[uniffi::export]
pub fn work_change(kind: String, found: TestAtConditions, left: TestAtConditions) -> Result<WorkValues, ScienceError> {
    let work = work(&kind, &found, &left)?;
    Ok(WorkValues { heat_w: work.heat_w.as_ref().map(Into::into), cop: (&work.cop).into() })
}

/// Hot water used, and what electricity costs.
#[derive(Debug, Clone, uniffi::Record)]
pub struct HotWaterUse {
    /// Litres a day.
    pub litres_a_day: ReadingValue,
    /// Cold water, °C.
    pub cold_c: ReadingValue,
    /// Hot water, °C.
    pub hot_c: ReadingValue,
    /// Price of a kilowatt-hour.
    pub price_a_kwh: ReadingValue,
}

/// A year before and after the work.
#[derive(Debug, Clone, uniffi::Record)]
pub struct YearValues {
    /// Electricity with the COP as found, kWh.
    pub found_kwh: DoubtedValue,
    /// Electricity with the COP as left, kWh.
    pub left_kwh: DoubtedValue,
    /// The one less the other, kWh.
    pub saved_kwh: DoubtedValue,
    /// What that costs; none where no difference can be told.
    pub saved_cost: Option<DoubtedValue>,
}

/// [`year`], with the COP of [`work_change`].
#[uniffi::export]
pub fn year_change(
    kind: String,
    found: TestAtConditions,
    left: TestAtConditions,
    hot_water: HotWaterUse,
) -> Result<YearValues, ScienceError> {
    let heat = hot_water_kwh(
        &hot_water.litres_a_day.doubted("litres_a_day")?,
        &hot_water.cold_c.doubted("cold_c")?,
        &hot_water.hot_c.doubted("hot_c")?,
    )?;
    let year = year(&heat, &work(&kind, &found, &left)?.cop, &hot_water.price_a_kwh.doubted("price_a_kwh")?)?;
    Ok(YearValues {
        found_kwh: (&year.found_kwh).into(),
        left_kwh: (&year.left_kwh).into(),
        saved_kwh: (&year.saved_kwh).into(),
        saved_cost: year.saved_cost.as_ref().map(Into::into),
    })
}

/// What a condenser passes, with its doubt.
#[derive(Debug, Clone, uniffi::Record)]
pub struct CondenserValues {
    /// Logarithmic mean temperature difference.
    pub lmtd_k: DoubtedValue,
    /// Heat for each kelvin of it.
    pub ua_w_k: DoubtedValue,
    /// Condensing temperature less water out.
    pub approach_k: DoubtedValue,
    /// Resistance of what has settled.
    pub fouling_m2_k_w: DoubtedValue,
}

/// [`EndsRead::ua_w_k`] and [`exchanger::fouling_resistance_read`] of a condenser, by the heat test that ran on it.
#[uniffi::export]
pub fn condenser_by_instruments(
    test: HeatReadings,
    condensing_c: ReadingValue,
    area_m2: ReadingValue,
    ua_clean_w_k: ReadingValue,
) -> Result<CondenserValues, ScienceError> {
    let heat = test.heat("once")?;
    let condensing_c = condensing_c.doubted("condensing_c")?;
    let approach_k = condensing_c.less(&heat.outlet_c);
    let ends = EndsRead {
        hot_in_c: condensing_c.clone(),
        hot_out_c: condensing_c,
        cold_in_c: heat.inlet_c,
        cold_out_c: heat.outlet_c,
    };
    let ua_w_k = ends.ua_w_k(&heat.heat_w)?;
    let fouling = exchanger::fouling_resistance_read(
        &area_m2.doubted("area_m2")?,
        &ua_w_k,
        &ua_clean_w_k.doubted("ua_clean_w_k")?,
    )?;
    Ok(CondenserValues {
        lmtd_k: (&ends.lmtd_k()?).into(),
        ua_w_k: (&ua_w_k).into(),
        approach_k: (&approach_k).into(),
        fouling_m2_k_w: (&fouling).into(),
    })
}
