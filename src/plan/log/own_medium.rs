use super::{LogPlan, PieceLog};
use crate::job::treatment_of;
use crate::stock::Medium;
use crate::stock::material::Provenance;
use std::fmt;

/// Why the medium of a log cannot be kept as one of the shop's own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoMedium {
    /// No film was fitted.
    NoFilm,
    /// The readings do not bound the film.
    Unbounded,
    /// Films of several pieces were fitted: one file is one medium.
    Several,
}

impl fmt::Display for NoMedium {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::NoFilm => "there is no fitted film to keep as a medium",
            Self::Unbounded => "the readings do not bound the film, so that a medium made from them would be a guess",
            Self::Several => "films of several pieces were fitted, and one file is one medium",
        })
    }
}

impl NoMedium {
    /// What to do.
    pub fn help(self) -> &'static str {
        match self {
            Self::NoFilm => "leave --keep-medium out; the text says why there is none",
            Self::Unbounded => "read more often while the piece still changes, and leave --keep-medium out",
            Self::Several => "give the readings of one piece at a time",
        }
    }
}

/// The medium of a log under a name of its own, with the range of the fitted film in place of what it had, at the temperature that
/// the job says. It holds for pieces of like size in the same place; that is what its source says.
///
/// # Errors
/// [`NoMedium`] where there is no one film to keep.
pub fn own_medium(plan: &LogPlan<'_>, id: &str) -> Result<Medium, NoMedium> {
    let mut fitted = plan.pieces.iter().filter_map(|piece| Some((piece, piece.fitted.as_ref().ok()?)));
    let (piece, film) = fitted.next().ok_or(NoMedium::NoFilm)?;
    if fitted.next().is_some() {
        return Err(NoMedium::Several);
    }
    if film.unbounded {
        return Err(NoMedium::Unbounded);
    }
    let treatment = treatment_of(plan.job, piece.piece).ok_or(NoMedium::NoFilm)?;
    treatment
        .medium
        .with_film(id, piece.medium_temperature, film.range, provenance(plan, piece))
        .ok_or(NoMedium::NoFilm)
}

fn provenance(plan: &LogPlan<'_>, piece: &PieceLog) -> Provenance {
    let title = plan.job.heading.title.trim();
    let of = if title.is_empty() { String::new() } else { format!(" of \"{title}\"") };
    let source = format!("readings{of} in the medium {}; for parts of like size in the same place", piece.medium);
    let words = format!("film fitted to {} readings, two standard uncertainties either way", piece.points.len());
    Provenance::of_calculation(&source, &words)
}
