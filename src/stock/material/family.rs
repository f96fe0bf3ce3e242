//! Families of materials that rub alike.

use std::fmt;

use serde::Deserialize;

/// Family that a material belongs to; friction is tabulated by pairs of families.
#[derive(Clone, Copy, Debug, Deserialize, Eq, Ord, PartialEq, PartialOrd)]
#[serde(rename_all = "lowercase")]
pub enum Family {
    /// Carbon, alloy, stainless and bearing steels, iron-nickel alloys.
    Steel,
    /// Grey and ductile cast iron.
    #[serde(rename = "cast iron")]
    CastIron,
    /// Aluminium and magnesium alloys.
    #[serde(rename = "light alloy")]
    LightAlloy,
    /// Copper, brass and bronze.
    #[serde(rename = "copper alloy")]
    CopperAlloy,
    /// Titanium alloys.
    Titanium,
    /// Ceramics.
    Ceramic,
    /// Plastics.
    Polymer,
}

impl Family {
    /// Every family.
    pub const ALL: [Self; 7] = [
        Self::Steel,
        Self::CastIron,
        Self::LightAlloy,
        Self::CopperAlloy,
        Self::Titanium,
        Self::Ceramic,
        Self::Polymer,
    ];
}

impl fmt::Display for Family {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Steel => "steel",
            Self::CastIron => "cast iron",
            Self::LightAlloy => "light alloy",
            Self::CopperAlloy => "copper alloy",
            Self::Titanium => "titanium",
            Self::Ceramic => "ceramic",
            Self::Polymer => "polymer",
        })
    }
}
