//! Which descaling acid may meet which metal.
//!
//! Chloride pits and cracks stainless steel, so hydrochloric acid is out there. Aluminium and zinc dissolve in every one
//! of these acids (their oxides too). Copper and its alloys stand them cold and for a short time, better with an
//! inhibitor; soft solder less so. Titanium stands them weak and cold.
//! Range: acids as descalers have them, diluted by their label, cold (30 °C and below), for the label's time.
//! Accuracy: a word, not a rate. Where sources differ the more cautious one was taken: UFC 3-240-13FN lets inhibited sulfamic
//! acid onto galvanised steel, others clean aluminium with weak citric acid; neither is allowed here.
//! Source: hydrochloric acid on stainless, galvanised steel and aluminium: UFC 3-240-13FN (2005), 9-2.2.6; the rest from
//! memory. The label of the descaler, the maker of the exchanger and local rules come first: they may forbid more, and what
//! is forbidden here stays forbidden.

use super::acids::Acid;
use super::error::ScienceError;

/// What water touches in an exchanger.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Metal {
    /// Stainless steel, welded or nickel-brazed.
    Stainless,
    /// Stainless plates brazed with copper.
    CopperBrazed,
    /// Copper.
    Copper,
    /// Aluminium.
    Aluminium,
    /// Zinc: galvanised steel, brass that may lose its zinc.
    Zinc,
    /// Soft-soldered joints.
    Solder,
    /// Titanium.
    Titanium,
    /// Copper with nickel.
    Cupronickel,
}

impl Metal {
    /// Every metal.
    pub const ALL: [Metal; 8] = [
        Metal::Stainless,
        Metal::CopperBrazed,
        Metal::Copper,
        Metal::Aluminium,
        Metal::Zinc,
        Metal::Solder,
        Metal::Titanium,
        Metal::Cupronickel,
    ];

    /// By its name.
    pub fn parse(metal: &str) -> Result<Self, ScienceError> {
        let known = "stainless, copper-brazed, copper, aluminium, zinc, solder, titanium or cupronickel";
        let found = Metal::ALL.into_iter().find(|one| one.name() == metal);
        found.ok_or_else(|| ScienceError::word("metal", metal, known))
    }

    /// Its name.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Metal::Stainless => "stainless",
            Metal::CopperBrazed => "copper-brazed",
            Metal::Copper => "copper",
            Metal::Aluminium => "aluminium",
            Metal::Zinc => "zinc",
            Metal::Solder => "solder",
            Metal::Titanium => "titanium",
            Metal::Cupronickel => "cupronickel",
        }
    }
}

/// Whether an acid may meet a metal.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Suits {
    /// It may.
    Allowed,
    /// Within limits that the reason tells.
    WithLimits,
    /// It may not.
    Forbidden,
}

impl Suits {
    /// Its name.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Suits::Allowed => "allowed",
            Suits::WithLimits => "with-limits",
            Suits::Forbidden => "forbidden",
        }
    }
}

/// Why.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Reason {
    /// Diluted and cold it leaves the metal alone.
    LeavesAlone,
    /// Chloride pits and cracks it.
    ChloridePits,
    /// The metal dissolves.
    Dissolves,
    /// It eats the joints.
    EatsJoints,
    /// Only with an inhibitor that the label names.
    Inhibited,
    /// Only weak, cold and short.
    WeakAndShort,
}

impl Reason {
    /// Its name.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Reason::LeavesAlone => "leaves-alone",
            Reason::ChloridePits => "chloride-pits",
            Reason::Dissolves => "dissolves",
            Reason::EatsJoints => "eats-joints",
            Reason::Inhibited => "inhibited",
            Reason::WeakAndShort => "weak-and-short",
        }
    }
}

/// Whether `acid` may meet `metal`, and why. From memory, as the head of this file tells.
#[must_use]
pub const fn suits(acid: Acid, metal: Metal) -> (Suits, Reason) {
    const ALONE: (Suits, Reason) = (Suits::Allowed, Reason::LeavesAlone);
    const INHIBITED: (Suits, Reason) = (Suits::WithLimits, Reason::Inhibited);
    const SHORT: (Suits, Reason) = (Suits::WithLimits, Reason::WeakAndShort);
    match (metal, acid) {
        (Metal::Aluminium | Metal::Zinc, _) => (Suits::Forbidden, Reason::Dissolves),
        (Metal::Stainless | Metal::CopperBrazed, Acid::Hydrochloric) => (Suits::Forbidden, Reason::ChloridePits),
        (Metal::Solder, Acid::Hydrochloric) => (Suits::Forbidden, Reason::EatsJoints),
        (Metal::Stainless, _)
        | (Metal::Copper | Metal::Cupronickel | Metal::CopperBrazed | Metal::Titanium, Acid::Citric) => ALONE,
        (Metal::Copper | Metal::Cupronickel | Metal::CopperBrazed, _) => INHIBITED,
        (Metal::Solder | Metal::Titanium, _) => SHORT,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const ACIDS: [Acid; 4] = [Acid::Hydrochloric, Acid::Citric, Acid::Phosphoric, Acid::Sulfamic];

    /// Common practice, no source: hydrochloric acid attacks stainless plates; sulfamic and citric are what they get.
    #[test]
    fn stainless_takes_no_hydrochloric_acid_and_takes_the_others() {
        let of = |acid| suits(acid, Metal::Stainless).0;
        assert_eq!(ACIDS.map(of), [Suits::Forbidden, Suits::Allowed, Suits::Allowed, Suits::Allowed]);
    }

    /// Common practice, no source.
    #[test]
    fn no_acid_comes_near_aluminium_or_zinc() {
        for acid in ACIDS {
            for metal in [Metal::Aluminium, Metal::Zinc] {
                assert_eq!(suits(acid, metal), (Suits::Forbidden, Reason::Dissolves), "{acid:?} {metal:?}");
            }
        }
    }

    #[test]
    fn plates_brazed_with_copper_are_never_better_off_than_either_of_their_metals() {
        for acid in ACIDS {
            let worse = suits(acid, Metal::Stainless).0.max(suits(acid, Metal::Copper).0);
            assert_eq!(suits(acid, Metal::CopperBrazed).0, worse, "{acid:?}");
        }
    }

    #[test]
    fn a_metal_is_found_by_its_name_and_an_unknown_one_is_refused() {
        for metal in Metal::ALL {
            assert_eq!(Metal::parse(metal.name()), Ok(metal));
        }
        assert!(Metal::parse("no-acid").is_err());
    }
}
