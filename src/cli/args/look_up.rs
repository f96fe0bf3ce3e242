//! Flags of the commands that look something up.

use super::shared::{Format, OwnFlags, UnitsFlag};
use crate::report::schemas;
use clap::Args;
use clap::ValueEnum;
use clap::builder::PossibleValuesParser;

#[derive(Args, Debug)]
pub(in crate::cli) struct LimitsFlags {
    /// Nominal size, in mm unless a unit is given: 62, "62 mm", "2.4409 in"
    pub(in crate::cli) nominal: String,
    /// Tolerance class (N7, h6), or bearing class ("ISO 492 Normal") with --ring
    pub(in crate::cli) class: String,
    /// Which ring of a bearing the class belongs to
    #[arg(long, value_enum)]
    pub(in crate::cli) ring: Option<RingFlag>,
    /// Form of the result
    #[arg(long, value_enum, default_value_t = Format::Text)]
    pub(in crate::cli) format: Format,
    #[command(flatten)]
    pub(in crate::cli) units: UnitsFlag,
}

#[derive(Args, Debug)]
pub(in crate::cli) struct PairFlags {
    /// Nominal size, in mm unless a unit is given: 62, "62 mm", "2.4409 in"
    pub(in crate::cli) nominal: String,
    /// Class of the bore: H7, or "ISO 492 Normal" for a bearing's bore on a shaft
    pub(in crate::cli) bore: String,
    /// Class of what goes in: s6, or "ISO 492 Normal" for a bearing's outside
    pub(in crate::cli) inner: String,
    /// Form of the result
    #[arg(long, value_enum, default_value_t = Format::Text)]
    pub(in crate::cli) format: Format,
    #[command(flatten)]
    pub(in crate::cli) units: UnitsFlag,
}

#[derive(Args, Debug)]
pub(in crate::cli) struct MaterialsFlags {
    /// Id or plain name of one material
    pub(in crate::cli) name: Option<String>,
    /// Every property at this temperature
    #[arg(long, value_name = "TEMPERATURE", allow_hyphen_values = true, requires = "name")]
    pub(in crate::cli) at: Option<String>,
    /// Form of the result
    #[arg(long, value_enum, default_value_t = Format::Text)]
    pub(in crate::cli) format: Format,
    #[command(flatten)]
    pub(in crate::cli) own: OwnFlags,
}

#[derive(Args, Debug)]
pub(in crate::cli) struct MediaFlags {
    /// Id or plain name of one medium
    pub(in crate::cli) name: Option<String>,
    #[command(flatten)]
    pub(in crate::cli) own: OwnFlags,
    /// Form of the result
    #[arg(long, value_enum, default_value_t = Format::Text)]
    pub(in crate::cli) format: Format,
}

#[derive(Args, Debug)]
pub(in crate::cli) struct SchemaFlags {
    /// Whose schema
    #[arg(value_name = "NAME", default_value = "plan", value_parser = PossibleValuesParser::new(schemas::names()))]
    pub(in crate::cli) of: String,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub(in crate::cli) enum RingFlag {
    Inner,
    Outer,
}
