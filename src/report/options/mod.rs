//! The list of ways to fit a part, as text, JSON or CSV.

mod data;
mod text;

pub use data::{csv, json};
pub use text::{legend, picture_title, text};

use crate::plan::options::{Used, Way, Worked};

/// Each medium of a way with the soak that it gives.
fn soaks<'w>(way: &'w Way, worked: &'w Worked) -> impl Iterator<Item = (&'w Used, &'w crate::plan::Soak)> {
    let chill = way.chill.as_ref().zip(worked.seat.chill.as_ref());
    let warm = way.warm.as_ref().zip(worked.seat.warm.as_ref());
    warm.into_iter().chain(chill)
}
