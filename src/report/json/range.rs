//! A quantity in the three cases.

use schemars::JsonSchema;
use serde::Serialize;

/// The same quantity in the three cases of the fit.
#[derive(Clone, Copy, Debug, JsonSchema, Serialize)]
pub struct RangeDocument<T> {
    /// Largest inner part in the smallest outer part.
    pub tightest: T,
    /// Both at the middle of their limits.
    pub middle: T,
    /// Smallest inner part in the largest outer part.
    pub loosest: T,
}
