//! Scale: indices, the carbonate calculation, and when to descale.

use crate::science::ScienceError;
use crate::science::carbonate::WaterAnalysis;
use crate::science::descaling::{self, HeatedUse, Symptom, Trend};
use crate::science::quantity::celsius;
use crate::science::scaling::TapWater;
use crate::science::uncertainty::{Cause, Doubted};

/// Water after heating.
#[derive(Debug, Clone, uniffi::Record)]
pub struct HeatedWaterValues {
    /// Its pH when hot.
    pub ph: f64,
    /// Its index when hot.
    pub calcite_saturation_index: f64,
}

/// Advice for the next descaling.
#[derive(Debug, Clone, uniffi::Record)]
pub struct DescaleAdviceValues {
    /// What to plan for, in months from now.
    pub months: u32,
    /// The range in which the right time may lie.
    pub least_months: u32,
    /// See `least_months`.
    pub most_months: u32,
    /// The key of the words that say why.
    pub reason: String,
    /// The key of the words that say whether a bound holds it.
    pub held: String,
}

/// [`TapWater::langelier`].
#[uniffi::export]
pub fn langelier_index(
    ph: f64,
    temperature_c: f64,
    calcium_mg_l_caco3: f64,
    alkalinity_mg_l_caco3: f64,
    tds_mg_l: f64,
) -> Result<f64, ScienceError> {
    tap(ph, temperature_c, calcium_mg_l_caco3, alkalinity_mg_l_caco3, tds_mg_l).langelier()
}

/// [`TapWater::ryznar`].
#[uniffi::export]
pub fn ryznar_index(
    ph: f64,
    temperature_c: f64,
    calcium_mg_l_caco3: f64,
    alkalinity_mg_l_caco3: f64,
    tds_mg_l: f64,
) -> Result<f64, ScienceError> {
    tap(ph, temperature_c, calcium_mg_l_caco3, alkalinity_mg_l_caco3, tds_mg_l).ryznar()
}

fn tap(ph: f64, temperature_c: f64, calcium_mg_l_caco3: f64, alkalinity_mg_l_caco3: f64, tds_mg_l: f64) -> TapWater {
    TapWater { ph, temperature: celsius(temperature_c), calcium_mg_l_caco3, alkalinity_mg_l_caco3, tds_mg_l }
}

/// [`WaterAnalysis::calcite_saturation_index`].
#[uniffi::export]
#[allow(clippy::too_many_arguments, reason = "an analysis has so many lines")]
pub fn calcite_saturation_index(
    ph: f64,
    temperature_c: f64,
    calcium_mg_l: f64,
    magnesium_mg_l: f64,
    sodium_mg_l: f64,
    potassium_mg_l: f64,
    alkalinity_mg_l_caco3: f64,
    sulfate_mg_l: f64,
    chloride_mg_l: f64,
) -> Result<f64, ScienceError> {
    analysis(
        ph,
        temperature_c,
        calcium_mg_l,
        magnesium_mg_l,
        sodium_mg_l,
        potassium_mg_l,
        alkalinity_mg_l_caco3,
        sulfate_mg_l,
        chloride_mg_l,
    )
    .calcite_saturation_index()
}

/// [`WaterAnalysis::heated`].
#[uniffi::export]
#[allow(clippy::too_many_arguments, reason = "an analysis has so many lines")]
pub fn heated_water(
    ph: f64,
    temperature_c: f64,
    calcium_mg_l: f64,
    magnesium_mg_l: f64,
    sodium_mg_l: f64,
    potassium_mg_l: f64,
    alkalinity_mg_l_caco3: f64,
    sulfate_mg_l: f64,
    chloride_mg_l: f64,
    heated_c: f64,
) -> Result<HeatedWaterValues, ScienceError> {
    let cold = analysis(
        ph,
        temperature_c,
        calcium_mg_l,
        magnesium_mg_l,
        sodium_mg_l,
        potassium_mg_l,
        alkalinity_mg_l_caco3,
        sulfate_mg_l,
        chloride_mg_l,
    );
    let hot = cold.heated(celsius(heated_c))?;
    Ok(HeatedWaterValues { ph: hot.ph, calcite_saturation_index: hot.calcite_saturation_index })
}

/// [`WaterAnalysis::ion_imbalance`].
#[uniffi::export]
#[allow(clippy::too_many_arguments, reason = "an analysis has so many lines")]
pub fn ion_imbalance(
    ph: f64,
    temperature_c: f64,
    calcium_mg_l: f64,
    magnesium_mg_l: f64,
    sodium_mg_l: f64,
    potassium_mg_l: f64,
    alkalinity_mg_l_caco3: f64,
    sulfate_mg_l: f64,
    chloride_mg_l: f64,
) -> Result<f64, ScienceError> {
    analysis(
        ph,
        temperature_c,
        calcium_mg_l,
        magnesium_mg_l,
        sodium_mg_l,
        potassium_mg_l,
        alkalinity_mg_l_caco3,
        sulfate_mg_l,
        chloride_mg_l,
    )
    .ion_imbalance()
}

/// [`descaling::advise`]. The trend is left out, or given whole: months since the last descaling, what was watched (`approach` in
/// kelvin, `heat` as a share lost), by how much it worsened, and the standard uncertainty of that.
#[uniffi::export(default(trend_months = None, symptom = None, worsened = None, worsened_u = None))]
#[allow(clippy::too_many_arguments, reason = "plain numbers at the border")]
pub fn descale_advice(
    surface_index: f64,
    surface_index_u: f64,
    throughput_l_year: f64,
    hardness_mg_l_caco3: f64,
    trend_months: Option<f64>,
    symptom: Option<String>,
    worsened: Option<f64>,
    worsened_u: Option<f64>,
) -> Result<DescaleAdviceValues, ScienceError> {
    let water = HeatedUse {
        surface_index: doubted("surface_index", surface_index, "surface_index_u", surface_index_u)?,
        throughput_l_year,
        hardness_mg_l_caco3,
    };
    let trend = if trend_months.is_none() && symptom.is_none() && worsened.is_none() && worsened_u.is_none() {
        None
    } else {
        let (worsened, u) = (given("worsened", worsened)?, given("worsened_u", worsened_u)?);
        Some(Trend {
            months: given("trend_months", trend_months)?,
            symptom: Symptom::parse(&given("symptom", symptom)?)?,
            worsened: doubted("worsened", worsened, "worsened_u", u)?,
        })
    };
    let advice = descaling::advise(&water, trend.as_ref())?;
    Ok(DescaleAdviceValues {
        months: advice.months,
        least_months: advice.least_months,
        most_months: advice.most_months,
        reason: advice.reason.key().to_owned(),
        held: advice.held.key().to_owned(),
    })
}

#[allow(clippy::too_many_arguments, reason = "an analysis has so many lines")]
fn analysis(
    ph: f64,
    temperature_c: f64,
    calcium_mg_l: f64,
    magnesium_mg_l: f64,
    sodium_mg_l: f64,
    potassium_mg_l: f64,
    alkalinity_mg_l_caco3: f64,
    sulfate_mg_l: f64,
    chloride_mg_l: f64,
) -> WaterAnalysis {
    WaterAnalysis {
        ph,
        temperature: celsius(temperature_c),
        calcium_mg_l,
        magnesium_mg_l,
        sodium_mg_l,
        potassium_mg_l,
        alkalinity_mg_l_caco3,
        sulfate_mg_l,
        chloride_mg_l,
    }
}

fn given<T>(name: &str, value: Option<T>) -> Result<T, ScienceError> {
    value.ok_or_else(|| ScienceError::Missing { argument: name.to_owned() })
}

fn doubted(name: &str, value: f64, name_u: &str, u: f64) -> Result<Doubted, ScienceError> {
    Doubted::new(name, value)?.because(name_u, Cause::new(name.to_owned()), u)
}
