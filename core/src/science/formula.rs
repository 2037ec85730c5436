//! Molar masses from chemical formulas.
//!
//! ```text
//! M = Σ atoms of an element · its standard atomic weight
//! ```
//! Range: the elements below; brackets up to eight deep; up to 64 characters and 999 of a kind. Names: citric, sulfamic,
//! phosphoric, hydrochloric, formic (the plain acids, without crystal water).
//! Accuracy: that of the abridged weights, five digits, which is better than the source of any chemical bought.
//! Source: IUPAC standard atomic weights 2021, abridged, from memory, compared with the PyPI package molmass 2026.1.8.

use super::error::ScienceError;
use uom::si::f64::MolarMass;
use uom::si::molar_mass::gram_per_mole;

const ELEMENTS: [(&str, f64); 30] = [
    ("H", 1.0080),
    ("Li", 6.94),
    ("B", 10.81),
    ("C", 12.011),
    ("N", 14.007),
    ("O", 15.999),
    ("F", 18.998),
    ("Na", 22.990),
    ("Mg", 24.305),
    ("Al", 26.982),
    ("Si", 28.085),
    ("P", 30.974),
    ("S", 32.06),
    ("Cl", 35.45),
    ("K", 39.098),
    ("Ca", 40.078),
    ("Ti", 47.867),
    ("Cr", 51.996),
    ("Mn", 54.938),
    ("Fe", 55.845),
    ("Ni", 58.693),
    ("Cu", 63.546),
    ("Zn", 65.38),
    ("Br", 79.904),
    ("Sr", 87.62),
    ("Ag", 107.87),
    ("Sn", 118.71),
    ("I", 126.90),
    ("Ba", 137.33),
    ("Pb", 207.2),
];

const NAMES: [(&str, &str); 5] = [
    ("citric", "C6H8O7"),
    ("sulfamic", "H3NSO3"),
    ("phosphoric", "H3PO4"),
    ("hydrochloric", "HCl"),
    ("formic", "HCOOH"),
];

const LENGTH_MAX: usize = 64;
const DEPTH_MAX: usize = 8;
const COUNT_MAX: u32 = 999;

/// The molar mass of `formula`, a formula such as `Ca(HCO3)2` or one of the names above.
pub fn molar_mass(formula: &str) -> Result<MolarMass, ScienceError> {
    let written = NAMES.iter().find(|(name, _)| *name == formula).map_or(formula, |(_, written)| written);
    sum(written).map(MolarMass::new::<gram_per_mole>).ok_or_else(|| {
        ScienceError::word("formula", formula, "a formula such as CaCO3 or Ca(HCO3)2, or an acid's name such as citric")
    })
}

/// Grams a mole, or none if the formula cannot be read.
fn sum(formula: &str) -> Option<f64> {
    if formula.is_empty() || formula.len() > LENGTH_MAX || !formula.is_ascii() {
        return None;
    }
    // One running sum for each open bracket; the outermost first.
    let mut sums = vec![0.0];
    let mut rest = formula;
    while let Some(first) = rest.chars().next() {
        if first == '(' {
            rest = rest.get(1..)?;
            sums.push(0.0);
            if sums.len() > DEPTH_MAX {
                return None;
            }
            continue;
        }
        let grams = if first == ')' {
            rest = rest.get(1..)?;
            sums.pop().filter(|group| *group > 0.0)?
        } else {
            let small = rest.chars().skip(1).take_while(char::is_ascii_lowercase).count();
            let (symbol, after) = rest.split_at_checked(1 + small)?;
            rest = after;
            ELEMENTS.iter().find(|(known, _)| *known == symbol)?.1
        };
        let digits = rest.chars().take_while(char::is_ascii_digit).count();
        let (count, after) = rest.split_at_checked(digits)?;
        rest = after;
        let count: u32 = if count.is_empty() { 1 } else { count.parse().ok()? };
        if count == 0 || count > COUNT_MAX {
            return None;
        }
        // A bracket closed that was never opened leaves nothing to add to.
        *sums.last_mut()? += f64::from(count) * grams;
    }
    match sums.as_slice() {
        [only] => Some(*only),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn brackets_multiply_what_they_hold() {
        let grams = |formula| molar_mass(formula).unwrap().get::<gram_per_mole>();
        assert!((grams("Ca(HCO3)2") - grams("CaC2H2O6")).abs() < 1e-12);
        assert!((grams("Mg(Al(OH)4)2") - grams("MgAl2O8H8")).abs() < 1e-12);
    }

    #[test]
    fn what_is_not_a_formula_is_refused() {
        for wrong in ["", "Xx", "(", ")", "()", "H)2(", "H0", "H1000", "h2o", "2H", "CaCO3 ", "é", "((((((((H))))))))"]
        {
            assert!(molar_mass(wrong).is_err(), "{wrong}");
        }
    }

    proptest! {
        #[test]
        fn any_text_has_an_answer_or_a_refusal(text in ".{0,80}", near in "[()HCaO0-9]{0,70}") {
            for formula in [text, near] {
                if let Ok(mass) = molar_mass(&formula) {
                    prop_assert!(mass.get::<gram_per_mole>() >= 1.0);
                }
            }
        }
    }
}
