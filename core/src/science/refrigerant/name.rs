//! The refrigerants that are known, by their names.

use crate::science::ScienceError;

/// A refrigerant, as its nameplate calls it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Refrigerant {
    /// Propane.
    R290,
    /// Isobutane.
    R600a,
    /// Carbon dioxide.
    R744,
    /// Difluoromethane.
    R32,
    /// 1,1,1,2-tetrafluoroethane.
    R134a,
    /// 2,3,3,3-tetrafluoropropene.
    R1234yf,
    /// R32 and R125, half each.
    R410A,
    /// R32, R125 and R134a, with a wide glide.
    R407C,
    /// R1234yf and R134a.
    R513A,
    /// R32 and R1234yf.
    R454B,
}

impl Refrigerant {
    /// All that are known.
    pub const ALL: [Self; 10] = [
        Self::R290,
        Self::R600a,
        Self::R744,
        Self::R32,
        Self::R134a,
        Self::R1234yf,
        Self::R410A,
        Self::R407C,
        Self::R513A,
        Self::R454B,
    ];

    /// Its name after ISO 817.
    pub fn as_str(self) -> &'static str {
        match self {
            Self::R290 => "R290",
            Self::R600a => "R600a",
            Self::R744 => "R744",
            Self::R32 => "R32",
            Self::R134a => "R134a",
            Self::R1234yf => "R1234yf",
            Self::R410A => "R410A",
            Self::R407C => "R407C",
            Self::R513A => "R513A",
            Self::R454B => "R454B",
        }
    }

    /// By its name on a nameplate; case, spaces and hyphens do not matter. Any other name is refused with the list.
    pub fn named(name: &str) -> Result<Self, ScienceError> {
        let written = || name.bytes().filter(|byte| !matches!(byte, b' ' | b'-')).map(|byte| byte.to_ascii_lowercase());
        let known =
            |refrigerant: &Self| written().eq(refrigerant.as_str().bytes().map(|byte| byte.to_ascii_lowercase()));
        Self::ALL.into_iter().find(known).ok_or_else(|| {
            let names: Vec<&str> = Self::ALL.iter().map(|refrigerant| refrigerant.as_str()).collect();
            ScienceError::word("refrigerant", name, &format!("one of {}", names.join(", ")))
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_nameplate_may_write_it_its_own_way() {
        assert_eq!(Refrigerant::named("R-454b"), Ok(Refrigerant::R454B));
        assert_eq!(Refrigerant::named(" r 1234 YF"), Ok(Refrigerant::R1234yf));
        for refrigerant in Refrigerant::ALL {
            assert_eq!(Refrigerant::named(refrigerant.as_str()), Ok(refrigerant));
        }
    }

    #[test]
    fn an_unknown_name_is_refused_with_those_that_are_known() {
        for unknown in ["R22", "", "R290a", "290", "R\u{ff12}90"] {
            let refused = Refrigerant::named(unknown).unwrap_err();
            assert!(matches!(&refused, ScienceError::NotUnderstood { value, .. } if value == unknown));
            assert!(Refrigerant::ALL.iter().all(|known| refused.to_string().contains(known.as_str())), "{refused}");
        }
    }
}
